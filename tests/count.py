# SPDX-License-Identifier: GPL-3.0-or-later
"""Prints "N passed, N failed[, N skipped]" from the test runner's JUnit log."""
import sys
import xml.etree.ElementTree as ET

passed = failed = skipped = 0
for case in ET.parse(sys.argv[1]).getroot().iter("testcase"):
    kinds = {child.tag for child in case}
    if kinds & {"failure", "error"}:
        failed += 1
    elif "skipped" in kinds:
        skipped += 1
    else:
        passed += 1
print(f"{passed} passed, {failed} failed" + (f", {skipped} skipped" if skipped else ""))
sys.exit(1 if failed or not passed else 0)
