# SPDX-License-Identifier: GPL-3.0-or-later
"""Proves that each layer includes only headers of layers before it (DEVELOPERS.md, "Layers"). Prints TAP."""
import pathlib
import re
import sys

ROOT = pathlib.Path(sys.argv[1])
# Public headers by the layer that implements them.
HEADERS = {
    "base": {"cause", "error", "units", "geom", "contour", "solid", "workers", "evidence", "told-length"},
    "furnishing": {"kind"},
    "project": {"mass-time", "works", "norms", "norms-edit", "reckoning", "page", "project", "history"},
    "store": {"store", "recovery"},
    "space": {"bearing", "capacity", "made", "scene", "setting", "order", "stretch", "setting-out", "mensa", "moment", "people", "levels",
              "sight", "stonework", "sun", "free-floor", "room-to-move"},
    "placing": {"arrange", "catches", "furnish", "handles", "new-church", "retype", "traverse"},
    "rules": {"limit-range", "rules", "remedy"},
    "drawing": {"board", "drawing", "lettering", "level-diagram", "marks", "order-marks", "pens", "pew-view", "projection", "sheet",
                "sight-drawing", "sun-marks", "change-marks", "surface", "tiles", "view", "way-drawing",
                "evidence-drawing"},
    "schedule": {"bill", "bolt", "communion", "linen", "schedule"},
    "review": {"capacities", "card", "laying", "linen-plan", "review", "schedules"},
    "cli": set(),
    "app": set(),
}
USES = {
    "base": set(),
    "furnishing": {"base"},
    "project": {"base", "furnishing"},
    "store": {"base", "furnishing", "project"},
    "space": {"base", "furnishing", "project"},
}
USES["placing"] = USES["space"] | {"space"}
for layer in ("rules", "drawing", "schedule"):
    USES[layer] = USES["space"] | {"space"}
USES["review"] = USES["rules"] | {"rules", "drawing", "schedule"}
USES["cli"] = USES["review"] | {"review", "store"}
USES["app"] = USES["cli"] | {"cli", "placing"}
BELOW_APP = re.compile(r"#include <gtk/|#include <gdk/")

owner = {name: layer for layer, names in HEADERS.items() for name in names}
faults = []
for name in sorted(p.stem for p in (ROOT / "include/footpace").glob("*.h")):
    if name not in owner:
        faults.append(f"include/footpace/{name}.h belongs to no layer in tests/layers.py")
for layer in HEADERS:
    files = sorted((ROOT / "src" / layer).glob("*.[ch]")) + [ROOT / f"include/footpace/{n}.h" for n in HEADERS[layer]]
    for path in files:
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            found = re.match(r'#include "footpace/([\w-]+)\.h"', line)
            if found and owner.get(found[1], layer) not in USES[layer] | {layer}:
                faults.append(f"{path.relative_to(ROOT)}:{number}: {layer} may not use {owner[found[1]]}")
            if layer != "app" and BELOW_APP.match(line):
                faults.append(f"{path.relative_to(ROOT)}:{number}: only app may use the toolkit")

print("1..1")
for fault in faults:
    print("#", fault)
print("not ok 1 layers" if faults else "ok 1 layers")
