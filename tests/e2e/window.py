# SPDX-License-Identifier: GPL-3.0-or-later
"""Someone sets out the high altar of the sample parish anew: by mouse and keyboard, read through the
accessibility interface, and at last through the files that were written.

usage: window.py PROGRAM SAMPLE
"""
import pathlib
import re
import shutil
import subprocess
import sys
import time
import xml.etree.ElementTree as ET

import screen
from screen import Failure, Program, check, click, drag, hand, has_window, keys, wait_for, write

NS = "{urn:footpace:project:1}"
NUMBER = r"([−-]?\d+(?:\.\d+)?)"


def number(text):
    return float(text.replace("−", "-"))


class Task:
    def __init__(self, program, sample, folder):
        self.folder = folder
        self.file = folder / "parish.footpace"
        shutil.copy(sample, self.file)
        self.before = self.altar_in(sample)
        self.program = Program([program, str(self.file)], folder / "said.txt")
        self.board = self.program.wait("Board", "image")
        self.done = 0

    # --- reading ---

    @staticmethod
    def alternative_in(path, identity):
        for alternative in ET.parse(path).getroot().iter(NS + "alternative"):
            if alternative.get("id") == identity:
                return alternative
        return None

    def altar_in(self, path, alternative="b"):
        altar = self.alternative_in(path, alternative).find(NS + "altar")
        return {name: float(altar.get(name)) for name in ("x", "y", "length", "depth")}

    def told(self):
        return self.board.get_description()

    def readout(self):
        """What the board says of the pointer: "1:132    x −171   y 8277"."""
        return self.program.find(re.compile(r"^1:\d"), "label").get_name()

    def field(self, name):
        return self.program.wait(name, ("text", "entry", "text box"))

    def value(self, name):
        return self.program.text(self.field(name))

    def findings(self):
        found = self.program.find("Findings, worst first", "list")
        return [found.get_child_at_index(i).get_name() for i in range(found.get_child_count())]

    def has_settled(self):
        return not any("Being computed" in f for f in self.findings()) and self.program.find(
            re.compile("^No finding against"), "label")

    # --- where the church lies on the screen ---

    def plan_at(self, x, y):
        hand("mousemove", round(x), round(y))
        time.sleep(0.15)
        said = re.search(rf"x {NUMBER}\s+y {NUMBER}", self.readout())
        return (number(said[1]), number(said[2])) if said else None

    def calibrate(self):
        """From two points of the plan, as the board itself names them; a third must agree, for the first two
        may have been read while the board was still being laid out."""
        wait_for("the plan, to one scale, under the pointer", self.is_calibrated)

    def is_calibrated(self):
        left, top, width, height = self.program.box(self.board)
        a, b, c = [(left + width * u, top + height * v) for u, v in ((0.30, 0.72), (0.45, 0.92), (0.27, 0.95))]
        wa, wb, wc = self.plan_at(*a), self.plan_at(*b), self.plan_at(*c)
        if not (wa and wb and wc) or wa[0] == wb[0] or wa[1] == wb[1]:
            return False
        self.sx, self.sy = (b[0] - a[0]) / (wb[0] - wa[0]), (b[1] - a[1]) / (wb[1] - wa[1])
        self.ox, self.oy = a[0] - wa[0] * self.sx, a[1] - wa[1] * self.sy
        there = self.spot(*wc)
        # x to the right, y up the screen.
        return (abs(self.sx + self.sy) < 0.02 * self.sx and abs(there[0] - c[0]) <= 2
                and abs(there[1] - c[1]) <= 2)

    def spot(self, x, y):
        return self.ox + x * self.sx, self.oy + y * self.sy

    # --- the task ---

    def step(self, name, deed):
        deed()
        self.done += 1
        print(f"ok {self.done} {name}", flush=True)

    def opens(self):
        wait_for("the title of the project", lambda: self.program.find(re.compile("Holy Rood"), "frame"))
        wait_for("the findings", self.has_settled, 60)
        check("Nothing is chosen" in self.told(), f"the board says {self.told()!r}")
        check(self.findings(), "nothing is found, in a parish that has much to be found")

    def chooses(self):
        self.calibrate()
        # The front of the mensa, clear of the tabernacle, the cross and the candles.
        self.grip = (-self.before["length"] / 3, self.before["y"] - self.before["depth"] / 2 + 150)
        click(*self.spot(*self.grip))
        wait_for("the altar to be chosen, on the axis",
                 lambda: re.search("Chosen: High altar, .*on the axis", self.told()))
        wait_for("its length beside the board", lambda: self.value("Length of the mensa") == "2700")

    def drags(self):
        before = self.findings()
        x, y = self.grip
        drag(*self.spot(x, y), *self.spot(x + 640, y - 1010), held="ctrl")  # finely: nothing catches
        wait_for("the altar to stand elsewhere", lambda: "to the Epistle side" in self.told())
        wait_for("the findings to follow", lambda: self.has_settled() and self.findings() != before, 60)
        self.moved = number(self.value("Across (Epistle side +)")), number(self.value("Along (east +)"))
        # One picture element is some 35 mm at this scale; the hand is rounded to 1 mm.
        check(abs(self.moved[0] - 640) <= 80, f"it was moved across by {self.moved[0]}")
        check(abs(self.moved[1] - (self.before["y"] - 1010)) <= 80, f"it was moved along to {self.moved[1]}")

    def escapes(self):
        """A drag that is given up leaves everything as it was."""
        x, y = self.grip[0] + 640, self.grip[1] - 1010
        told = self.told()
        hand("mousemove", *map(round, self.spot(x, y)), "mousedown", 1)
        for i in range(1, 8):
            hand("mousemove", *map(round, self.spot(x + 100 * i, y)))
            time.sleep(0.03)
        keys("Escape")
        time.sleep(0.3)
        hand("mouseup", 1)
        wait_for("the altar to be put back", lambda: self.told() == told)
        check(number(self.value("Across (Epistle side +)")) == self.moved[0], "Escape did not put it back")

    def nudges(self):
        keys("Left", "Left", "shift+Left", "alt+Left")
        across = self.moved[0] - 121
        wait_for("the arrow keys to move it", lambda: number(self.value("Across (Epistle side +)")) == across)
        keys("ctrl+z")
        wait_for("one step back for all of them",
                 lambda: number(self.value("Across (Epistle side +)")) == self.moved[0])

    def catches(self):
        """Near the axis it comes to rest on it, and one step leads back."""
        x, y = self.grip[0] + self.moved[0], self.grip[1] + self.moved[1] - self.before["y"]
        drag(*self.spot(x, y), *self.spot(x - self.moved[0] + 75, y))
        wait_for("the axis to catch it", lambda: number(self.value("Across (Epistle side +)")) == 0)
        keys("ctrl+z")
        wait_for("it to be back", lambda: number(self.value("Across (Epistle side +)")) == self.moved[0])

    def types_how_far(self):
        """A number typed while the button is held goes that far in the hand's direction."""
        x, y = self.grip[0] + self.moved[0], self.grip[1] + self.moved[1] - self.before["y"]
        hand("mousemove", *map(round, self.spot(x, y)), "mousedown", 1)
        for i in range(1, 8):
            hand("mousemove", *map(round, self.spot(x - 60 * i, y)))
            time.sleep(0.03)
        write("123+2")
        wait_for("the field to say which way", lambda: self.program.find("To the Gospel side", ("text", "entry", "text box")))
        hand("mouseup", 1)
        keys("Return")
        wait_for("it to stand just there", lambda: number(self.value("Across (Epistle side +)")) == self.moved[0] - 125)
        check(number(self.value("Along (east +)")) == self.moved[1], "it went sideways")
        keys("ctrl+z")
        wait_for("it to be back", lambda: number(self.value("Across (Epistle side +)")) == self.moved[0])

    def measures(self):
        """The tape, from one front corner of the altar to the other."""
        x, y = self.moved[0], self.moved[1] - self.before["depth"] / 2
        keys("t")
        wait_for("the tape", lambda: "Tape: " in self.told())
        click(*self.spot(x - self.before["length"] / 2, y))
        wait_for("the corner", lambda: "corner of High altar" in self.told())
        click(*self.spot(x + self.before["length"] / 2, y))
        wait_for("the length of the altar", lambda: re.search(r"Tape: 2\W700 mm,across 2\W700 mm", self.told()))
        keys("shift+Right")
        wait_for("the arrow keys to move its end", lambda: re.search(r"Tape: 2\W800 mm", self.told()))
        keys("Escape")
        wait_for("it to be put away", lambda: "Tape: " not in self.told())

    def pulls(self):
        """The end of the altar, by keyboard: it grows on that side alone, for it stands off the axis."""
        keys("Return")
        wait_for("its end in hand", lambda: "In hand: Length of the mensa of High altar" in self.told())
        keys("Left")
        wait_for("it to be longer", lambda: self.value("Length of the mensa") == "2710")
        wait_for("the other end to stay",
                 lambda: number(self.value("Across (Epistle side +)")) == self.moved[0] - 5)
        keys("ctrl+z")
        wait_for("it to be as it was", lambda: self.value("Length of the mensa") == "2700")
        keys("Escape")
        wait_for("nothing in hand", lambda: "In hand" not in self.told() and "Chosen: High altar" in self.told())

    def shows_one_view(self):
        keys("3")
        wait_for("the plan alone", lambda: self.told().startswith("Plan of "))
        keys("3")
        wait_for("all three", lambda: self.told().startswith("Elevation, section and plan of "))

    def chooses_several(self):
        keys("ctrl+a")
        many = wait_for("all to be chosen", lambda: re.search(r"(\d+) chosen: ", self.told()))
        check(int(many[1]) > 8, f"{many[1]} are chosen")
        keys("Left")
        wait_for("all to be moved", lambda: self.program.find("Undo", "push button").get_description()
                 == f"Undo: Move {many[1]} things")
        keys("ctrl+z")
        x, y = self.grip[0] + self.moved[0], self.grip[1] + self.moved[1] - self.before["y"]
        click(*self.spot(x, y))
        wait_for("the altar alone", lambda: "Chosen: High altar" in self.told())
        check(number(self.value("Across (Epistle side +)")) == self.moved[0], "it is not where it was")

    def types(self):
        entry = self.field("Length of the mensa")
        self.program.click(entry)
        keys("ctrl+a")
        write("2.8 m")
        keys("Return")
        wait_for("what was typed to be taken", lambda: self.value("Length of the mensa") == "2800")
        self.program.click(entry)
        keys("ctrl+a")
        write("very long")
        keys("Return")
        wait_for("what is wrong to be said beside it",
                 lambda: "a number is wanted" in entry.get_description())
        keys("Escape")
        wait_for("the field as it was", lambda: self.value("Length of the mensa") == "2800")

    def typed_over(self):
        """What is typed over a dimension hangs on the board."""
        return any(w.get_name() == "High altar: Length of the mensa" for w in self.program.walk(self.board))

    def types_over_the_dimension(self):
        """The figure of the altar's length stands in the elevation, over the middle of the altar."""
        left, top, _, height = self.program.box(self.board)
        x = self.spot(self.moved[0], 0)[0]
        for y in range(int(top + height * 0.10), int(top + height * 0.55), 7):
            click(x, y)
            time.sleep(0.25)
            if self.typed_over():
                self.figure = (x, y)
                break
        else:
            raise Failure("no dimension of the altar's length can be clicked in the elevation")
        keys("ctrl+a")
        write("2650")
        keys("Return")
        wait_for("the dimension to be taken", lambda: self.program.find(re.compile("^2650$")) is not None
                 or self.value("Length of the mensa") == "2650")

    def scale(self):
        return number(re.match(r"1:" + NUMBER, self.readout())[1])

    def frames(self):
        """A value that is being typed does not swallow the click on what comes next."""
        before = self.scale()
        click(*self.figure)
        wait_for("the dimension", self.typed_over)
        self.program.click(self.program.wait("Church", "push button"))
        wait_for("the whole church", lambda: self.scale() > before * 1.2)
        # From a field, too.
        self.program.click(self.field("Depth of the mensa"))
        keys("ctrl+0")
        wait_for("the sanctuary", lambda: self.scale() < before * 1.1)
        keys("ctrl+9")
        wait_for("the whole church", lambda: self.scale() > before * 1.2)
        keys("ctrl+0")
        wait_for("the sanctuary again", lambda: self.scale() < before * 1.1)
        self.calibrate()

    def adds_by_name(self):
        keys("ctrl+i")
        wait_for("where to type", lambda: self.program.find("Find a kind of thing to add"))
        write("creden")
        keys("Return")
        wait_for("a credence", lambda: re.search("Chosen: Credence", self.told()))
        keys("ctrl+z")
        wait_for("it to be gone", lambda: "Chosen: Credence" not in self.told())
        click(*self.spot(self.moved[0] - self.before["length"] / 3, self.moved[1] - self.before["depth"] / 2 + 150))
        wait_for("the altar to be chosen", lambda: "Chosen: High altar" in self.told())

    def reports(self):
        keys("ctrl+r")
        wait_for("the report", lambda: has_window("^Report$"))
        text = wait_for("its text", lambda: next(w for w in self.program.walk() if w.get_name() == "Report"
                                                 and w.get_role_name() in ("text", "entry", "text box")
                                                 and self.program.text(w)))
        for part in ("Rules looked at", "Cautions"):
            check(part in self.program.text(text), f"the report says nothing of {part!r}")
        keys("ctrl+f")
        write("rules looked at")
        wait_for("the words to be found", lambda: self.program.find(re.compile("^1 of [0-9]+$"), "label"))
        keys("Escape", "Escape")
        wait_for("the report to be closed", lambda: not has_window("^Report$"))

    def looks_from_the_pew(self):
        keys("ctrl+shift+v")
        wait_for("the view from the pew", lambda: has_window("^View from the Pew$"))
        told = re.compile(r"row (\d+), seat \d+, sitting; Offertory\s+Seen: mensa")
        seen = wait_for("what is seen from there", lambda: self.program.find(told, "label"))
        row = int(told.search(seen.get_name())[1])
        keys("Down")
        wait_for("the row behind", lambda: self.program.find(re.compile(rf"row {row + 1}, seat"), "label"))
        keys("Escape")
        wait_for("the view to be closed", lambda: not has_window("^View from the Pew$"))

    def undoes(self):
        wait_for("the altar to be chosen still", lambda: self.value("Length of the mensa") == "2650")
        keys("ctrl+z")
        wait_for("undo", lambda: self.value("Length of the mensa") == "2800")
        keys("ctrl+shift+z")
        wait_for("redo", lambda: self.value("Length of the mensa") == "2650")

    def makes_an_alternative(self):
        keys("ctrl+shift+n")
        wait_for("the dialog", lambda: has_window("New Alternative"))
        keys("ctrl+a")
        write("C: moved west")
        keys("Return")
        wait_for("the new alternative on the board",
                 lambda: self.program.find("C: moved west", ("toggle button", "push button")) is not None)
        check(self.alternative_in(self.file, "c") is None, "the file changed without being saved")

    def compares(self):
        keys("ctrl+k")
        wait_for("the comparison", lambda: self.program.find("Elevation: C: moved west", "image"), 60)
        labels = self.program.names("label")
        for head in ("As it is", "Freestanding altar on three steps", "High altar and rail restored", "C: moved west"):
            check(head in labels, f"{head!r} is not in the comparison")
        check(any("◆ required" in label for label in labels), "the mark ◆ is not explained")
        keys("Escape")
        wait_for("the board again", lambda: self.program.find("Board", "image"))

    def exports(self):
        path = self.folder / "elevation.pdf"
        before = self.program.box(self.board), self.scale()
        keys("ctrl+e")
        wait_for("the sheet", lambda: self.program.find(re.compile(r"Page 1 of \d+"), "image"), 60)
        self.program.click(self.program.wait(re.compile("Export…"), "push button"))
        wait_for("where to write it", lambda: has_window("Export Sheet"))
        time.sleep(1.0)
        keys("ctrl+a")
        write(str(path))
        keys("Return")
        wait_for("the file", lambda: path.exists() and path.read_bytes().rstrip().endswith(b"%%EOF"))
        if shutil.which("pdfinfo"):
            info = subprocess.run(["pdfinfo", path], capture_output=True, text=True, check=True).stdout
            # ISO 216: A3 is 420 mm by 297 mm; a point is 1/72 in.
            size = re.search(r"Page size:\s+([\d.]+) x ([\d.]+) pts", info)
            check(abs(float(size[1]) - 420 / 25.4 * 72) < 0.5 and abs(float(size[2]) - 297 / 25.4 * 72) < 0.5, info)
        alert = wait_for("the window to say so", self.program.alert)
        check(re.fullmatch(r"Written: .*elevation\.pdf", alert.get_name()), f"the window says {alert.get_name()!r}")
        check("Open Folder" in [w.get_name() for w in self.program.walk(alert)], "its folder cannot be opened")
        check((self.program.box(self.board), self.scale()) == before, "what was said has shifted the board")

    def saves(self):
        keys("ctrl+s")
        wait_for("the file to hold the new alternative", lambda: self.alternative_in(self.file, "c") is not None)

    def closes(self):
        keys("ctrl+w")
        check(wait_for("the program to end", lambda: self.program.process.poll() is not None, 60), "it did not end")
        check(self.program.process.returncode == 0, f"it ended with {self.program.process.returncode}")

    def left_behind(self):
        """What the saved file says, and what it does not."""
        old, new = self.altar_in(self.file, "b"), self.altar_in(self.file, "c")
        check(old == new, f"the copy differs: {old}, {new}")
        check(self.alternative_in(self.file, "c").get("name") == "C: moved west", "the name of the alternative")
        check(old["length"] == 2650.0, f"length {old['length']}")
        check((old["x"], old["y"]) == self.moved, f"it stands at {old['x']}, {old['y']}, not {self.moved}")
        for identity in ("existing", "a"):
            check(self.alternative_in(self.file, identity) is not None, f"alternative {identity} is gone")
        said = [line for line in self.program.said().splitlines()
                if re.search(r"WARNING|CRITICAL|ERROR|runtime error", line)]
        check(not said, "the program complained: " + "\n".join(said))

    def run(self):
        steps = [self.opens, self.chooses, self.drags, self.escapes, self.nudges, self.catches,
                 self.types_how_far, self.measures, self.pulls, self.shows_one_view, self.chooses_several, self.types,
                 self.types_over_the_dimension, self.undoes, self.frames, self.adds_by_name, self.reports, self.looks_from_the_pew, self.makes_an_alternative, self.compares, self.exports,
                 self.saves, self.closes, self.left_behind]
        print(f"1..{len(steps)}", flush=True)
        for deed in steps:
            self.step(deed.__name__.replace("_", " "), deed)


if __name__ == "__main__":
    sys.exit(screen.serve(__file__, Task))
