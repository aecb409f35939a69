# SPDX-License-Identifier: GPL-3.0-or-later
"""Someone who has never seen the program settles a finding: by the mouse and by keys, with what it would make of the church
shown before; then all of them at once; and takes it back.

usage: settling.py PROGRAM SAMPLE
"""
import re
import shutil
import sys
import time
import xml.etree.ElementTree as ET

import screen
from screen import Failure, Program, check, hand, has_window, keys, wait_for

NS = "{urn:footpace:project:1}"
GATE = re.compile("gate in the rail is too narrow", re.IGNORECASE)
SHOWN = "Drawn over it, not made: "


class Task:
    def __init__(self, program, sample, folder):
        self.file = folder / "parish.footpace"
        shutil.copy(sample, self.file)
        self.program = Program([program, str(self.file)], folder / "said.txt")
        self.board = self.program.wait("Board", "image")
        self.done = 0

    def step(self, name, deed):
        deed()
        self.done += 1
        print(f"ok {self.done} {name}", flush=True)

    # --- reading ---

    def told(self):
        return self.board.get_description()

    def findings(self):
        found = self.program.find("Findings, worst first", "list")
        return [found.get_child_at_index(i) for i in range(found.get_child_count())] if found else []

    def row(self, name):
        return next((f for f in self.findings() if name.search(f.get_name() or "")), None)

    def checked(self):
        names = [f.get_name() for f in self.findings()]
        return names and not any("eing computed" in n for n in names) and self.program.find(re.compile("^No finding against"), "label")

    def gates(self):
        root = ET.parse(self.file).getroot()
        return [float(rail.get("gate")) for rail in root.iter(NS + "rail") if rail.get("gate")]

    def goes_down_to(self, name):
        """The list is longer than it is high: from its head row by row, as it scrolls along."""
        keys("ctrl+shift+f")
        keys("Home")
        for _ in range(len(self.findings())):
            time.sleep(0.2)
            if name.search((self.program.focused() or self.board).get_name() or ""):
                return
            keys("Down")
        raise Failure("the arrow does not come to the finding")

    # --- the task ---

    def opens(self):
        wait_for("the findings", self.checked, 90)

    def chooses_a_finding(self):
        wait_for("the finding of the gate", lambda: self.row(GATE))
        self.goes_down_to(GATE)
        self.program.wait("Make This Change", "push button")
        check(self.program.find(re.compile(r"Gate from \d+ mm to 815 mm"), "label"), "what changes from what to what is not said")
        check(SHOWN not in self.told(), "it is drawn though nobody points at it")

    def points_at_it(self):
        x, y, w, h = self.program.box(self.program.find("Make This Change", "push button"))
        hand("mousemove", round(x + w / 2) - 3, round(y + h / 2))
        hand("mousemove", round(x + w / 2), round(y + h / 2))
        wait_for("it on the board", lambda: SHOWN + "Gate: 815 mm" in self.told())
        bx, by, bw, bh = self.program.box(self.board)
        hand("mousemove", round(bx + bw / 2), round(by + 40))
        wait_for("it to go", lambda: SHOWN not in self.told())

    def makes_it(self):
        before = len(self.findings())
        self.program.click(self.program.find("Make This Change", "push button"))
        wait_for("the finding to be settled", lambda: self.checked() and self.row(GATE) is None, 60)
        check(len(self.findings()) < before, "there are as many findings as before")
        check(SHOWN not in self.told(), "what is made is still drawn over it")
        keys("ctrl+z")
        wait_for("the finding again", lambda: self.row(GATE), 60)

    def by_keys(self):
        """Ctrl+Shift+F leads to the findings, Tab to what settles the chosen one; what has the focus is drawn."""
        wait_for("the checks", self.checked, 60)
        self.goes_down_to(GATE)
        wait_for("what settles it", lambda: self.program.find("Make This Change", "push button"))
        for _ in range(12):
            if (self.program.focused() or self.board).get_name() == "Make This Change":
                break
            keys("Tab")
            time.sleep(0.2)
        else:
            raise Failure("Tab does not come to what settles it")
        wait_for("it on the board", lambda: SHOWN + "Gate: 815 mm" in self.told())
        keys("Return")
        wait_for("the finding to be settled", lambda: self.checked() and self.row(GATE) is None, 60)
        keys("ctrl+z")
        wait_for("the finding again", lambda: self.row(GATE), 60)
        wait_for("the checks", self.checked, 60)

    def settles_all(self):
        before = [f.get_name() for f in self.findings()]
        keys("ctrl+shift+x")
        wait_for("the list of what was settled", lambda: has_window("Settle All"), 180)
        told = self.program.wait("What was settled, and what was not", "list")
        rows = [told.get_child_at_index(i).get_name() for i in range(told.get_child_count())]
        check(rows and all(re.match("(Settled|Not settled), (required|recommended|customary): .+\\. .+", r) for r in rows), rows)
        self.n_settled = sum(r.startswith("Settled") for r in rows)
        check(self.n_settled > 0, rows)
        keys("Escape")
        wait_for("it to close", lambda: not has_window("Settle All"))
        wait_for("the checks", self.checked, 60)
        check(len(self.findings()) <= len(before) - self.n_settled, (before, [f.get_name() for f in self.findings()]))

    def saves_and_takes_back(self):
        old = self.file.read_bytes()
        keys("ctrl+s")
        wait_for("the file", lambda: self.file.read_bytes() != old)
        check(815.0 in self.gates(), f"gates {self.gates()}")
        keys("ctrl+z")
        wait_for("the finding again", lambda: self.row(GATE), 60)

    def said_nothing(self):
        said = [line for line in self.program.said().splitlines()
                if re.search(r"WARNING|CRITICAL|ERROR|runtime error", line)]
        check(not said, "the program complained: " + "\n".join(said))

    def run(self):
        steps = [self.opens, self.chooses_a_finding, self.points_at_it, self.makes_it, self.by_keys, self.settles_all,
                 self.saves_and_takes_back, self.said_nothing]
        print(f"1..{len(steps)}", flush=True)
        for deed in steps:
            self.step(deed.__name__.replace("_", " "), deed)


if __name__ == "__main__":
    sys.exit(screen.serve(__file__, Task))
