# SPDX-License-Identifier: GPL-3.0-or-later
"""Prints "N passed, N failed[, N skipped]" from the test runner's logs.

Usage: count.py MESON-LOGS

Cases are counted from the JUnit log. A program that crashed or ran out of time may have reported no failed case
of its own: the plain log tells of it, and it counts as one failure.
"""
import json
import pathlib
import sys
import xml.etree.ElementTree as ET

logs = pathlib.Path(sys.argv[1])
passed = failed = skipped = 0
for case in ET.parse(logs / "testlog.junit.xml").getroot().iter("testcase"):
    kinds = {child.tag for child in case}
    if kinds & {"failure", "error"}:
        failed += 1
    elif "skipped" in kinds:
        skipped += 1
    else:
        passed += 1
programs = [json.loads(line)["result"] for line in (logs / "testlog.json").read_text(encoding="utf-8").splitlines()]
failed = max(failed, sum(result not in ("OK", "SKIP", "EXPECTEDFAIL") for result in programs))
print(f"{passed} passed, {failed} failed" + (f", {skipped} skipped" if skipped else ""))
sys.exit(1 if failed or not passed else 0)
