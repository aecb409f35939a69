# SPDX-License-Identifier: GPL-3.0-or-later
"""A newcomer comes from nothing to a first usable sanctuary: the brief, a nave with a chancel, and what belongs in it.
Counts what has to be pressed, and reads what is found short afterwards.

usage: nothing.py PROGRAM
"""
import re
import sys
import time
import xml.etree.ElementTree as ET

import screen
from screen import Program, check, has_window, keys, wait_for, write

NS = "{urn:footpace:project:1}"
FIELD = ("text", "entry", "text box")
# What is set out after the room, by the words that someone would type.
WANTED = (("rail", "Communion rail"), ("gradine", "Gradine"), ("tabernacle", "Tabernacle"))


class Task:
    def __init__(self, program, folder):
        self.folder = folder
        self.file = folder / "new.footpace"
        self.program = Program([program], folder / "said.txt")
        self.done = self.pressed = 0

    # --- hands that count ---

    def press(self, *names):
        keys(*names)
        self.pressed += len(names)

    def type(self, text):
        write(text)
        self.pressed += len(text)

    # --- ears ---

    def focused(self, name):
        widget = self.program.focused()
        return widget is not None and self.program.answers(widget, name, None)

    def told(self):
        return self.program.wait("Board", "image").get_description()

    def findings(self):
        found = self.program.find("Findings, worst first", "list")
        return [found.get_child_at_index(i).get_name() for i in range(found.get_child_count())] if found else []

    def settled(self):
        return self.program.find(re.compile("^No finding against"), "label") and not any(
            "Being computed" in f for f in self.findings())

    # --- the task ---

    def brief_and_room(self):
        self.program.wait("Open the Sample Parish", "push button")
        self.press("ctrl+n")
        wait_for("the dialog", lambda: has_window("New Project"))
        wait_for("where the name goes", lambda: self.focused("Title"))
        self.type("Our Lady, Fennimore")
        self.press("Tab", "Tab", "Tab", "Tab")
        wait_for("the seats", lambda: self.focused("Seats wanted"))
        self.press("ctrl+a")
        self.type("160")
        wait_for("pews for them", lambda: self.program.find(re.compile("160 wanted"), "label"))
        self.press("Return")
        wait_for("the board", lambda: self.focused("Board"))
        check("High altar" in self.things() or "Altar" in self.things(), f"no altar: {self.things()}")
        check("Pews" in " ".join(self.things()), f"no pews: {self.things()}")

    def things(self):
        return [w.get_name().split(":", 1)[1].strip() for w in self.program.walk()
                if (w.get_name() or "").startswith("Name: ")]

    def sets_out(self):
        for typed, name in WANTED:
            self.press("ctrl+i")
            wait_for("where to type", lambda: self.program.find("Find a kind of thing to add"))
            self.type(typed)
            self.press("Return")
            wait_for(f"a {name}", lambda: re.search(f"Chosen: {name}", self.told(), re.I))

    def is_sound(self):
        """Nothing that is required is short: what a newcomer has not decided yet may well be."""
        wait_for("the findings", self.settled, 90)
        check(self.findings(), "nothing at all is found of a church that is only begun")
        weights = ("required: ", "recommended: ", "customary: ")
        check(all(f.startswith(weights) for f in self.findings()), f"findings without a weight: {self.findings()}")
        for finding in self.findings():
            print("# found:", finding.split(". ")[0], flush=True)
        self.short = [f for f in self.findings() if f.startswith(weights[0])]
        check(not self.short, "required, and short: " + "; ".join(self.short))

    def saves(self):
        self.press("ctrl+s")
        wait_for("where to save it", lambda: has_window("Save"))
        time.sleep(1.0)
        self.press("ctrl+a")
        self.type(str(self.file))
        self.pressed -= len(str(self.file))  # as long as the folder's name is here
        self.press("Return")
        wait_for("the file", self.file.exists)
        # A key that comes before it is gone is its own.
        wait_for("the dialog to go", lambda: not has_window("Save"))
        keys("ctrl+w")
        check(wait_for("the program to end", lambda: self.program.process.poll() is not None, 60), "it did not end")

    def left_behind(self):
        root = ET.parse(self.file).getroot()
        have = {e.tag.replace(NS, "") for e in root.iter()}
        for kind in ("wall", "floor", "pews", "altar", "footpace", "rail", "credence", "tabernacle", "crucifix",
                     "candlesticks"):
            check(kind in have, f"the file has no {kind}: {sorted(have)}")
        number = float(next(root.iter(NS + "candlesticks")).get("count"))
        check(number == 6, f"{number} candlesticks")
        print(f"# {self.pressed} keys", flush=True)
        # Two words for the title, a number of seats, and the names of three things are most of it.
        check(self.pressed <= 100, f"{self.pressed} keys for a first sanctuary")
        said = [line for line in self.program.said().splitlines()
                if re.search(r"WARNING|CRITICAL|ERROR|runtime error", line)]
        check(not said, "the program complained: " + "\n".join(said))

    def run(self):
        steps = [self.brief_and_room, self.sets_out, self.is_sound, self.saves, self.left_behind]
        screen.do_all(self, steps)


if __name__ == "__main__":
    sys.exit(screen.serve(__file__, Task))
