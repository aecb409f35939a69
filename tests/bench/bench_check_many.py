# SPDX-License-Identifier: GPL-3.0-or-later
"""Many small projects checked in one process on two processors, against the same on one.

The aim is a ratio: 1.9 times as many in the same time. On a machine of one processor there is nothing to measure.

Usage: bench_check_many.py FOOTPACE SAMPLES [PROJECTS]
"""
import csv
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import time

AIM = 1.9
FOOTPACE, SAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])
PROJECTS = int(sys.argv[3]) if len(sys.argv) > 3 else 120


def small_project():
    """The chapel with one alternative and a few seats: what is small about most projects of a diocese."""
    text = (SAMPLES / "chapel.footpace").read_text()
    first, second = [match.start() for match in re.finditer(r"^  <alternative ", text, re.M)][:2]
    end = text.index("</alternative>", second) + len("</alternative>\n")
    return text[:first] + text[second:end] + "</project>\n"


def took(folder, processors):
    begun = time.monotonic()
    done = subprocess.run([FOOTPACE, "check", folder, "--as", "csv"], stdout=subprocess.PIPE,
                          preexec_fn=lambda: os.sched_setaffinity(0, processors), check=False)
    assert done.returncode in (0, 1), done.returncode
    held = sum(int(row["held"]) for row in csv.DictReader(done.stdout.decode().splitlines()))
    return time.monotonic() - begun, held


def main():
    processors = sorted(os.sched_getaffinity(0))
    if len(processors) < 2:
        print("one processor: nothing to measure")
        return 77
    with tempfile.TemporaryDirectory() as folder:
        text = small_project()
        for i in range(PROJECTS):
            (pathlib.Path(folder) / f"{i:05}.footpace").write_text(text)
        ones, twos = [], []
        for _ in range(3):  # by turns: whatever else the machine does slows both alike
            ones.append(took(folder, processors[:1]))
            twos.append(took(folder, processors[:2]))
    one, two = min(ones), min(twos)
    print(f"{PROJECTS} projects: {one[0]:.2f} s on one processor, {two[0]:.2f} s on two, {one[0] / two[0]:.2f} times as many"
          f" (aim {AIM}); {two[1] / two[0]:.0f} rules held in a second")
    return 0 if one[0] / two[0] >= AIM else 1


sys.exit(main())
