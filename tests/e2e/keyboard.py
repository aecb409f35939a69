# SPDX-License-Identifier: GPL-3.0-or-later
"""The whole first task without a pointer: by keys alone, read through the accessibility interface as a screen reader
does, and at last from the files that were written.

usage: keyboard.py PROGRAM
"""
import re
import sys
import time
import xml.etree.ElementTree as ET

import screen
from screen import Failure, Program, check, has_window, keys, wait_for, write

NS = "{urn:footpace:project:1}"
FIELD = ("text", "entry", "text box")


def number(text):
    return float(re.sub("[\u202f\u00a0 ]", "", text.replace("−", "-")))


class Task:
    def __init__(self, program, folder):
        self.folder = folder
        self.file = folder / "parish.footpace"
        self.program = Program([program], folder / "said.txt")
        self.done = 0

    # --- what a screen reader says ---

    def focus(self, what, name, role=None):
        """Waits until what has the focus has a name (a string, or a compiled pattern)."""
        def is_it():
            widget = self.program.focused()
            return widget if widget is not None and self.program.answers(widget, name, role) else None
        try:
            return wait_for(what, is_it, 20)
        except Failure as failure:
            now = self.program.focused()
            raise Failure(f"{failure}; the focus is on "
                          f"{now and (now.get_role_name(), now.get_name())}") from None

    def tab_to(self, name, role=None, most=40, key="Tab"):
        """As many times as it takes; how many."""
        for times in range(most + 1):
            widget = self.program.focused()
            if widget is not None and self.program.answers(widget, name, role):
                return times
            keys(key)
            time.sleep(0.15)
        raise Failure(f"{most} times {key} did not come to {name!r}")

    def told(self):
        return self.program.wait("Board", "image").get_description()

    def value(self, name):
        return self.program.text(self.program.wait(name, FIELD))

    def settled(self):
        return self.program.find(re.compile("^No finding against"), "label") and not any(
            "Being computed" in f for f in self.findings())

    def findings(self):
        found = self.program.find("Findings, worst first", "list")
        return [found.get_child_at_index(i).get_name() for i in range(found.get_child_count())] if found else []

    @staticmethod
    def title(finding):
        """Of "recommended: The gate is narrow. 760 mm; …"."""
        return finding.split(": ", 1)[-1].split(". ")[0]

    # --- the task ---

    def opens_the_sample(self):
        self.program.wait("Open the Sample Parish", "push button")
        self.tab_to("Open the Sample Parish", "push button")
        keys("Return")
        wait_for("the title of the project", lambda: self.program.find(re.compile("Holy Rood"), "frame"))
        self.focus("the board", "Board")
        wait_for("the findings", self.settled, 60)

    def chooses_from_the_list(self):
        keys("ctrl+l")
        self.focus("the list", re.compile("^Furnishings"))
        for _ in range(12):
            keys("Down")
            time.sleep(0.1)
            if re.match("High altar, proposed, stands on Footpace", self.program.focused().get_name() or ""):
                break
        row = self.focus("the altar in the list", re.compile("^High altar, proposed"))
        check("level" in row.get_name() or "+" in row.get_name(), f"the row says no level: {row.get_name()!r}")
        wait_for("the board to know it", lambda: "Chosen: High altar" in self.told())
        keys("Return")
        self.focus("its first measure", "Length of the mensa", FIELD)

    def types_a_dimension(self):
        keys("ctrl+a")
        write("2.8 m")
        keys("Return")
        wait_for("what was typed to be taken", lambda: self.value("Length of the mensa") == "2800")
        keys("ctrl+a")
        write("as wide as can be")
        keys("Return")
        entry = self.program.find("Length of the mensa", FIELD)
        wait_for("it to be said that this is no length",
                 lambda: "a number is wanted" in entry.get_description())
        keys("Escape")
        wait_for("the field as it was", lambda: self.value("Length of the mensa") == "2800")

    def moves_it(self):
        keys("Escape")
        self.focus("the board", "Board")
        along = number(self.value("Along (east +)"))
        keys("shift+Down", "shift+Down", "Down")
        wait_for("the altar to be moved west by 210 mm", lambda: number(self.value("Along (east +)")) == along - 210)
        self.along = along - 210
        wait_for("the board to say where it is", lambda: "High altar" in self.told())

    def down_to(self, name):
        """To the entry of a menu, which has the focus then."""
        for _ in range(20):
            if (self.program.focused() or self.board).get_name() == name:
                return
            keys("Down")
            time.sleep(0.15)
        raise Failure(f"{name!r} is not reached; the focus is on {self.program.focused()}")

    def looks_at_it_in_grey(self):
        """From a page within the menu; the keys go on afterwards."""
        keys("F10")
        self.down_to("Look of the Board")
        keys("Return")
        time.sleep(0.5)
        self.down_to("Grey")
        keys("Return")
        keys("ctrl+l")
        self.focus("the list", re.compile("^High altar, proposed"))
        keys("Escape")

    def follows_a_finding(self):
        wait_for("the findings", self.settled, 60)
        keys("ctrl+shift+f")
        found = self.findings()
        self.focus("the first finding", found[0])
        at = next((i for i, f in enumerate(found) if re.search(r"\bgate\b", self.title(f), re.I)), None)
        check(at is not None, f"no finding about the gate: {found}")
        self.short = found[at]
        # The first has the focus and is not chosen by that alone.
        for key in ["Down"] * at or ["Down", "Up"]:
            keys(key)
            time.sleep(0.15)
        self.focus("the finding about the gate", self.short)
        wait_for("the change that would settle it", lambda: self.program.find("Make This Change", "push button"))
        keys("Return")
        self.focus("its field", re.compile("gate", re.I), FIELD)

    def settles_it(self):
        keys("ctrl+a")
        write("815")
        keys("Return")
        # ADA Standards (2010), 404.2.3, from memory: 32 in clear, which is 812.8 mm.
        wait_for("the finding to go", lambda: self.settled()
                 and self.title(self.short) not in map(self.title, self.findings()), 60)

    def asks_who_sees(self):
        """The bar is told as it stands; what is looked at is chosen in it."""
        keys("ctrl+j")
        told = wait_for("who sees the Host", lambda: self.program.find(
            re.compile(r"^Elevation of the Host, kneeling: from \d+ of 312 places the raised Host is wholly seen"), "label"), 60)
        check(told, "nothing is told")
        keys("ctrl+j")
        wait_for("the bar to go", lambda: not self.program.find(re.compile("^Elevation of the Host, kneeling"), "label"))

    def makes_an_alternative(self):
        keys("ctrl+shift+n")
        wait_for("the dialog", lambda: has_window("New Alternative"))
        self.focus("its name", "Name", FIELD)
        keys("ctrl+a")
        write("Without a pointer")
        keys("Return")
        wait_for("the new alternative on the board",
                 lambda: self.program.find("Without a pointer", ("toggle button", "push button")))

    def compares(self):
        keys("ctrl+k")
        wait_for("the comparison", lambda: self.program.find("Elevation: Without a pointer", "image"), 60)
        keys("Escape")
        self.focus("the board", "Board")

    def exports_an_elevation(self):
        path = self.folder / "elevation.pdf"
        keys("ctrl+e")
        wait_for("the sheet", lambda: self.program.find(re.compile(r"Page 1 of \d+"), "image"), 60)
        self.tab_to(re.compile("^Export…"), "push button")
        keys("Return")
        wait_for("where to write it", lambda: has_window("Export Sheet"))
        time.sleep(1.0)
        keys("ctrl+a")
        write(str(path))
        keys("Return")
        wait_for("the file", lambda: path.exists() and path.read_bytes().rstrip().endswith(b"%%EOF"))
        said = wait_for("the window to say so", self.program.alert).get_name()
        check(re.search(r"elevation\.pdf", said), f"the window says {said!r}")
        self.focus("the board", "Board")

    def saves(self):
        keys("ctrl+s")
        wait_for("where to save it", lambda: has_window("Save"))
        time.sleep(1.0)
        keys("ctrl+a")
        write(str(self.file))
        keys("Return")
        wait_for("the file", self.file.exists)
        # A key that comes before it is gone is its own.
        wait_for("the dialog to go", lambda: not has_window("Save"))
        keys("ctrl+w")
        check(wait_for("the program to end", lambda: self.program.process.poll() is not None, 60), "it did not end")
        check(self.program.process.returncode == 0, f"it ended with {self.program.process.returncode}")

    def left_behind(self):
        """What the saved file says."""
        root = ET.parse(self.file).getroot()
        found = {a.get("id"): a for a in root.iter(NS + "alternative")}
        new = next(a for a in found.values() if a.get("name") == "Without a pointer")
        for alternative in (found["b"], new):
            altar = alternative.find(NS + "altar")
            check(float(altar.get("length")) == 2800.0, f"length {altar.get('length')}")
            check(float(altar.get("y")) == self.along, f"it stands at {altar.get('y')}, not {self.along}")
            check(float(alternative.find(NS + "rail").get("gate")) == 815.0, "the gate")
        said = [line for line in self.program.said().splitlines()
                if re.search(r"WARNING|CRITICAL|ERROR|runtime error", line)]
        check(not said, "the program complained: " + "\n".join(said))

    def run(self):
        steps = [self.opens_the_sample, self.chooses_from_the_list, self.types_a_dimension, self.moves_it, self.looks_at_it_in_grey,
                 self.follows_a_finding, self.settles_it, self.asks_who_sees, self.makes_an_alternative, self.compares,
                 self.exports_an_elevation, self.saves, self.left_behind]
        screen.do_all(self, steps)


if __name__ == "__main__":
    sys.exit(screen.serve(__file__, Task))
