# SPDX-License-Identifier: GPL-3.0-or-later
"""A pastor who has timed Communion on a Sunday looks for how many there is room, types what he found, and keeps it: the window
of the capacity by its key, its fields, what is said where he typed something wrong, undo, and the file.

usage: capacity.py PROGRAM SAMPLE
"""
import re
import shutil
import sys
import xml.etree.ElementTree as ET

import screen
from screen import Program, check, do_all, has_window, keys, wait_for, write

NS = "{urn:footpace:project:1}"


class Task:
    def __init__(self, program, sample, folder):
        self.file = folder / "parish.footpace"
        shutil.copy(sample, self.file)
        self.program = Program([program, str(self.file)], folder / "said.txt")
        self.program.wait("Board", "image")
        self.done = 0

    def label(self, words):
        return self.program.find(re.compile(words), "label")

    def field(self, name):
        return self.program.wait(name, ("text", "entry", "text box"))

    def types(self, name, text):
        self.program.click(self.field(name))
        keys("ctrl+a")
        write(text)
        keys("Return")

    def kept(self):
        found = ET.parse(self.file).getroot().find(NS + "capacity")
        return found.attrib if found is not None else {}

    # --- the task ---

    def opens_it_by_its_key(self):
        keys("ctrl+h")
        wait_for("the window", lambda: has_window("^Capacity$"))
        wait_for("the seats", lambda: self.label("^Seats in all$"))
        check(self.label("International Building Code 2015, 1004.4"), "it is not said by which rule seats are counted")
        check(self.label("approves nothing"), "nothing warns that a count approves nothing")

    def types_what_he_found(self):
        """Of 312 people in two lines 156 come to each minister: 156 times 4 s, and 155 steps of 2 s."""
        for name, text in (("Communicants", "312"), ("Lines", "2"), ("Step in a line, seconds", "2"), ("Each, seconds", "4")):
            self.types(name, text)
        wait_for("the time in lines", lambda: self.label("^about 16 min$"))

    def is_told_what_is_wrong(self):
        self.types("Each, seconds", "soon")
        wait_for("what is wrong", lambda: self.label("soon"))
        self.types("Each, seconds", "4000")
        wait_for("what may be", lambda: self.label("it may be 0.1 to 600 seconds"))
        check(self.label("^about 16 min$"), "what is wrong has changed something")
        self.types("Each, seconds", "6")
        wait_for("the time in lines", lambda: self.label("^about 21 min$"))

    def takes_it_back(self):
        keys("ctrl+z")
        wait_for("the time before", lambda: self.label("^about 16 min$"))

    def keeps_it(self):
        keys("ctrl+s")
        wait_for("the file", lambda: self.kept().get("each") == "4")
        check(self.kept().get("people") == "312" and self.kept().get("lines") == "2", self.kept())
        keys("Escape")
        wait_for("it to close", lambda: not has_window("^Capacity$"))

    def said_nothing(self):
        said = [line for line in self.program.said().splitlines()
                if re.search(r"WARNING|CRITICAL|ERROR|runtime error", line)]
        check(not said, "the program complained: " + "\n".join(said))

    def run(self):
        do_all(self, [self.opens_it_by_its_key, self.types_what_he_found, self.is_told_what_is_wrong, self.takes_it_back,
                      self.keeps_it, self.said_nothing])


if __name__ == "__main__":
    sys.exit(screen.serve(__file__, Task))
