# SPDX-License-Identifier: GPL-3.0-or-later
"""Uses the command line as a person or a script does. Prints TAP.

Usage: test_cli.py FOOTPACE SAMPLES BUILD
"""
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET

FOOTPACE, SAMPLES, BUILD = sys.argv[1], pathlib.Path(sys.argv[2]), sys.argv[3]
PARISH = SAMPLES / "parish.footpace"
NO_DISPLAY = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY")}
# ISO 216 sizes, and the millimetre in points: 72 / 25.4.
PAPER_MM = {"a4": (297, 210), "a3": (420, 297), "letter": (279.4, 215.9)}
TESTS = []


def test(function):
    TESTS.append(function)
    return function


def footpace(*arguments, expect=None):
    done = subprocess.run([FOOTPACE, *map(str, arguments)], capture_output=True, text=True, env=NO_DISPLAY, timeout=300)
    if expect is not None:
        allowed = expect if isinstance(expect, tuple) else (expect,)
        assert done.returncode in allowed, f"exit {done.returncode}: {done.stderr or done.stdout[-400:]}"
    return done


@test
def help_and_version():
    text = footpace("--help", expect=0).stdout
    for command in ("check", "draw", "compare"):
        assert re.search(rf"footpace {command} FILE", text), command
        assert "--help" in footpace(command, "--help", expect=0).stdout
    assert re.fullmatch(r"footpace \d+\.\d+\.\d+\n", footpace("--version", expect=0).stdout)


@test
def findings_as_text_name_their_sources():
    done = footpace("check", PARISH, "--alternative", "b", expect=(0, 1))
    assert "Catholic Encyclopedia" in done.stdout
    for word in ("complies", "compliant", "approved by"):
        assert word not in done.stdout.lower(), word


@test
def findings_as_json_agree_with_the_exit_code():
    for alternative in ("existing", "a", "b"):
        done = footpace("check", PARISH, "--alternative", alternative, "--as", "json", expect=(0, 1))
        report = json.loads(done.stdout)
        short = [f for f in report["findings"] if f["found"] == "short" and f["weight"] == "required"]
        assert done.returncode == (1 if short else 0), alternative
        assert all(f["source"] for f in report["findings"])


@test
def an_elevation_is_drawn_to_scale_on_the_paper_asked_for():
    with tempfile.TemporaryDirectory() as folder:
        for paper, (width, height) in PAPER_MM.items():
            out = pathlib.Path(folder) / f"{paper}.pdf"
            footpace("draw", PARISH, "--alternative", "b", "--sheet", "elevation", "--paper", paper, "--out", out, expect=0)
            info = subprocess.run(["pdfinfo", out], capture_output=True, text=True, check=True).stdout
            size = re.search(r"Page size:\s+([\d.]+) x ([\d.]+)", info)
            assert abs(float(size[1]) - width * 72 / 25.4) < 0.02, info
            assert abs(float(size[2]) - height * 72 / 25.4) < 0.02, info


@test
def every_sheet_is_written_in_every_form():
    with tempfile.TemporaryDirectory() as folder:
        for sheet in ("plan", "elevation", "section", "board", "compare"):
            for form in ("pdf", "svg", "png"):
                out = pathlib.Path(folder) / f"{sheet}.{form}"
                footpace("draw", PARISH, "--sheet", sheet, "--out", out, expect=0)
                head = out.read_bytes()[:5]
                assert head.startswith({"pdf": b"%PDF-", "svg": b"<?xml", "png": b"\x89PNG"}[form]), (sheet, form, head)


@test
def the_svg_names_what_it_shows():
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "e.svg"
        footpace("draw", PARISH, "--alternative", "b", "--sheet", "elevation", "--out", out, expect=0)
        root = ET.parse(out).getroot()
        space = "{http://www.w3.org/2000/svg}"
        assert root.get("width").endswith("mm") and root.get("viewBox")
        assert not list(root.iter(space + "image")), "no raster"
        titles = " ".join(t.text or "" for t in root.iter(space + "title"))
        assert "altar" in titles.lower(), titles[:200]
        assert "PRELIMINARY" in " ".join("".join(t.itertext()) for t in root.iter(space + "text"))


@test
def alternatives_stand_in_columns():
    done = footpace("compare", PARISH, expect=(0, 1))
    for row in ("ootpace", "ail", "tone"):
        assert row in done.stdout, row


@test
def bad_use_and_bad_input_give_two_and_a_reason():
    with tempfile.TemporaryDirectory() as folder:
        broken = pathlib.Path(folder) / "broken.footpace"
        broken.write_text("<project")
        out = pathlib.Path(folder) / "x.pdf"
        for arguments in (
            ("check", "no-such-file.footpace"),
            ("check", broken),
            ("check", folder),
            ("check",),
            ("check", PARISH, "--as", "prose"),
            ("check", PARISH, "--alternative", "zzz"),
            ("check", PARISH, "--unknown"),
            ("draw", PARISH, "--sheet", "elevation"),
            ("draw", PARISH, "--sheet", "attic", "--out", out),
            ("draw", PARISH, "--sheet", "plan", "--out", out, "--paper", "a9"),
            ("draw", PARISH, "--sheet", "plan", "--out", out, "--scale", "nan"),
            ("draw", PARISH, "--sheet", "plan", "--out", out, "--scale", "1:1", "--paper", "a4"),
            ("draw", PARISH, "--sheet", "plan", "--out", f"{folder}/no/such/folder/x.pdf"),
            ("compare", broken),
        ):
            done = footpace(*arguments, expect=2)
            assert done.stderr.strip(), arguments
            assert not out.exists(), arguments


@test
def a_failed_drawing_keeps_the_old_file():
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "x.pdf"
        out.write_bytes(b"old")
        footpace("draw", PARISH, "--sheet", "plan", "--out", out, "--scale", "1:1", "--paper", "a4", expect=2)
        assert out.read_bytes() == b"old"


@test
def all_samples_are_read():
    for sample in sorted(SAMPLES.glob("*.footpace")):
        footpace("check", sample, expect=(0, 1))


@test
def the_first_command_of_the_readme_works_without_a_display():
    with tempfile.TemporaryDirectory() as folder:
        env = dict(NO_DISPLAY, FOOTPACE_BUILD=BUILD, TMPDIR=folder)
        done = subprocess.run([SAMPLES / "run"], capture_output=True, text=True, env=env, timeout=600)
        assert done.returncode == 0, done.stderr[-400:]
        written = {path.name for path in pathlib.Path(folder).glob("footpace-*/*")}
        assert written == {"elevation.pdf", "elevation.svg"}, written
        assert folder in done.stdout


def main():
    print(f"1..{len(TESTS)}")
    failed = 0
    for number, function in enumerate(TESTS, 1):
        name = function.__name__.replace("_", " ")
        try:
            function()
            print(f"ok {number} {name}")
        except Exception as problem:  # every case is reported, whatever it ran into
            failed += 1
            print(f"not ok {number} {name}")
            print("#", repr(problem).replace("\n", "\n# "))
        sys.stdout.flush()
    return 1 if failed else 0


sys.exit(main())
