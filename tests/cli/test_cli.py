# SPDX-License-Identifier: GPL-3.0-or-later
"""Uses the command line as a person or a script does. Prints TAP.

Usage: test_cli.py FOOTPACE SAMPLES BUILD
"""
import csv
import datetime
import io
import json
import math
import os
import pathlib
import re
import resource
import shutil
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET
import xml.sax.saxutils

FOOTPACE, SAMPLES, BUILD = sys.argv[1], pathlib.Path(sys.argv[2]), sys.argv[3]
PARISH, CHAPEL = SAMPLES / "parish.footpace", SAMPLES / "chapel.footpace"
FAN = SAMPLES / "fan.footpace"  # which has no works
NO_DISPLAY = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY")}
# ISO 216 sizes, and the millimetre in points: 72 / 25.4.
PAPER_MM = {"a4": (297, 210), "a3": (420, 297), "letter": (279.4, 215.9)}
# An invented place.
WHERE = ("--latitude", "51.5", "--longitude", "-0.1")
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
    for command in ("check", "sight", "draw", "compare", "sun", "linen", "card", "schedule", "capacity"):
        assert re.search(rf"footpace {command} FILE", text), command
        assert "--help" in footpace(command, "--help", expect=0).stdout
    assert "footpace measures" in text and "--schema" in footpace("measures", "--help", expect=0).stdout
    assert re.fullmatch(r"footpace \d+\.\d+\.\d+\n", footpace("--version", expect=0).stdout)


@test
def help_says_what_a_manual_page_says():
    page = (SAMPLES.parent / "src/cli/footpace.1").read_text().replace("\\", "")
    for command in ("check", "sight", "draw", "compare", "sun", "linen", "card", "schedule", "capacity"):
        text = footpace(command, "--help", expect=0).stdout
        assert f"footpace {command} [OPTION…] FILE" in text, text
        assert "Examples:" in text and "Exit status:" in text and "approves nothing" in text
        assert all(len(line) <= 100 for line in text.splitlines()), text
        options = re.findall(r"--([a-z]+)", text.split("Options:")[1].split("Examples:")[0])
        for option in set(options) - {"help"}:
            assert f"--{option}" in page, option


@test
def words_that_are_no_command_are_refused_without_a_window():
    done = footpace("chek", PARISH, expect=2)
    assert "“chek”" in done.stderr and "check, sight, draw, compare, sun, linen, card, schedule, capacity and measures" in done.stderr, done.stderr


@test
def findings_as_text_name_their_sources():
    done = footpace("check", PARISH, "--alternative", "b", expect=(0, 1))
    assert "Catholic Encyclopedia" in done.stdout
    for word in ("complies", "compliant", "approved by"):
        assert word not in done.stdout.lower(), word


@test
def sight_is_told_in_a_sentence_a_table_and_on_paper():
    text = footpace("sight", PARISH, "-a", "b", "--of", "host", expect=0).stdout
    wholly = int(re.match(r"Elevation of the Host, kneeling: from (\d+) of 312 places the raised Host is wholly seen", text)[1])
    rows = list(csv.DictReader(footpace("sight", PARISH, "-a", "b", "--of", "host", "--as", "csv",
                                        expect=0).stdout.splitlines()))
    assert list(rows[0]) == "place row number moment seen share how population percentile".split()
    # Kneeling places at the rail are in the table, but not among the 312.
    assert sum(row["how"] == "seen" and "rail" not in row["place"].lower() for row in rows) == wholly
    assert len({row["how"] for row in rows}) > 1
    assert {(row["population"], row["percentile"]) for row in rows} == {("ANSUR II (2012), half women, half men", "50.0")}
    place = re.search(r"Who sees least:\n    (.+?, seat \d+): ", text)[1]
    with tempfile.TemporaryDirectory() as folder:
        sheet = pathlib.Path(folder) / "sight.svg"
        footpace("sight", PARISH, "-a", "b", "--of", "host", "--place", place, "--out", sheet, expect=0)
        footpace("sight", PARISH, "-a", "b", "--of", "host", "--place", "pews-rear-g,6,3", "--out", sheet, expect=0)
        root = ET.parse(sheet).getroot()
        circles = [c for c in root.iter("{http://www.w3.org/2000/svg}circle") if "edge" in c.get("class", "")]
        assert len(circles) > 312, len(circles)


@test
def sight_tells_what_hangs_on_who_sits_where():
    asked = ("sight", PARISH, "-a", "b", "--of", "host", "--seeds", "3")
    text = footpace(*asked, expect=0).stdout
    found = re.search(r"3 times over \(seeds 0 to 2\): wholly seen from (\d+) of 312 places at least, (\d+) in the middle, "
                      r"(\d+) at most", text)
    least, middle, most = (int(number) for number in found.groups())
    assert least <= middle <= most and least < most, found[0]
    assert footpace(*asked, expect=0).stdout == text


@test
def what_sight_is_asked_wrongly_is_said():
    assert "tabernacle" in footpace("sight", PARISH, "--of", "organ", expect=2).stderr
    assert "elevation" in footpace("sight", PARISH, "--when", "vespers", expect=2).stderr
    assert "--of" in footpace("sight", PARISH, "--out", "x.pdf", expect=2).stderr
    assert "text or csv" in footpace("sight", PARISH, "--as", "prose", expect=2).stderr
    assert "2 to 99" in footpace("sight", PARISH, "--seeds", "1", expect=2).stderr
    assert "as text" in footpace("sight", PARISH, "--seeds", "9", "--as", "csv", expect=2).stderr
    done = footpace("sight", PARISH, "--of", "host", "--place", "the bishop's", "--out", "/nowhere/x.pdf", expect=2)
    assert "the bishop's" in done.stderr


@test
def every_rule_is_listed_on_demand():
    listed = footpace("check", PARISH, "--alternative", "a", "--all", expect=(0, 1)).stdout
    report = json.loads(footpace("check", PARISH, "--alternative", "a", "--as", "json", expect=(0, 1)).stdout)
    flat = re.sub(r"\s+", " ", listed)
    for finding in report["findings"]:
        assert f"[{finding['book']}: {finding['rule']}]" in flat, finding["rule"]
        assert finding["reason"] or finding["found"] in ("short", "within"), finding
    short = footpace("check", PARISH, "--alternative", "a", expect=(0, 1)).stdout
    assert len(short.splitlines()) < len(listed.splitlines())
    assert short.index("Recommended") < short.index("Rules looked at")


@test
def remedies_are_told_when_asked_for():
    """What was found is the same; each of what is short has a remedy, or says what stands in the way."""
    plain = json.loads(footpace("check", CHAPEL, "--as", "json", expect=(0, 1)).stdout)
    asked = json.loads(footpace("check", CHAPEL, "--as", "json", "--remedies", expect=(0, 1)).stdout)
    assert all(f["remedy"] is None for f in plain["findings"])
    hold_to_the_schema(asked)
    told = [f["remedy"] for f in asked["findings"] if f["found"] == "short"]
    assert told and all(r["text"] and bool(r["changes"]) == r["settles"] for r in told), told
    assert all(f["remedy"] is None for f in asked["findings"] if f["found"] != "short")
    for f in asked["findings"]:
        f["remedy"] = None
    assert asked == plain


@test
def text_is_the_same_in_every_locale():
    plain = footpace("check", CHAPEL, "--all", expect=(0, 1)).stdout
    assert "m³" in plain
    with tempfile.TemporaryDirectory() as folder:
        made = subprocess.run(["localedef", "-i", "de_DE", "-f", "UTF-8", f"{folder}/de_DE.UTF-8"], capture_output=True)
        for env in ({"LC_ALL": "C"}, {"LC_ALL": "de_DE.UTF-8", "LOCPATH": folder} if made.returncode == 0 else {}):
            done = subprocess.run([FOOTPACE, "check", str(CHAPEL), "--all"], capture_output=True, text=True,
                                  encoding="utf-8", env={**NO_DISPLAY, **env}, timeout=300)
            assert done.stdout == plain, env
            table = subprocess.run([FOOTPACE, "compare", str(CHAPEL)], capture_output=True, text=True,
                                   encoding="utf-8", env={**NO_DISPLAY, **env}, timeout=300)
            assert not re.search(r"\d,\d", table.stdout), table.stdout


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
        for sheet in ("plan", "elevation", "section", "cross", "sections", "board", "levels", "compare"):
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
def the_levels_are_drawn_and_told():
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "levels.svg"
        footpace("draw", PARISH, "--sheet", "levels", "--alternative", "b", "--paper", "a4", "--out", out, expect=0)
        space = "{http://www.w3.org/2000/svg}"
        words = " ".join("".join(t.itertext()) for t in ET.parse(out).getroot().iter(space + "text"))
        assert "LEVELS ALONG THE NAVE" in words and re.search(r"1:\d+, heights \d+ times", words), words
        assert "mensa" in words and "The lowest floor of the altar below which all of them stand" in words, words


@test
def a_view_from_the_pew_is_written_in_every_form():
    with tempfile.TemporaryDirectory() as folder:
        for place, form in (("front", "pdf"), ("pews-rear-g,6,3", "png"), ("Rear pews, Gospel side,6,3", "svg"),
                            ("strip", "pdf")):
            out = pathlib.Path(folder) / f"pew.{form}"
            footpace("draw", PARISH, "--pew", place, "--paper", "a4", "--out", out, expect=0)
            head = out.read_bytes()[:5]
            assert head.startswith({"pdf": b"%PDF-", "svg": b"<?xml", "png": b"\x89PNG"}[form]), (place, form, head)
        footpace("draw", PARISH, "--pew", "6,3", "--when", "elevation", "--look", "host", "--out", out.with_suffix(".svg"),
                 expect=0)
        root = ET.parse(out.with_suffix(".svg")).getroot()
        space = "{http://www.w3.org/2000/svg}"
        titles = [t.text or "" for t in root.iter(space + "title")]
        assert not list(root.iter(space + "image")), "no raster"
        assert any("row 5" in t for t in titles) and not any("row 7" in t for t in titles), "those in front, not behind"
        words = " ".join("".join(t.itertext()) for t in root.iter(space + "text"))
        assert "row 6, seat 3, kneeling" in words and "raised Host" in words, words


@test
def alternatives_stand_in_columns():
    lines = footpace("compare", PARISH, expect=(0, 1)).stdout.splitlines()
    rows = {re.split(r"\s{2,}", line)[0]: re.split(r"\s{2,}", line)[1:] for line in lines}
    # What parish.footpace has, on a chancel floor at 300: one step of 150, three of 150 and three of 165.
    assert rows["Footpace above the datum"] == ["+0.450 m", "+0.750 m", "+0.795 m"], rows
    assert [cell.rstrip(" !") for cell in rows["Altar steps"]] == ["1 × 150 mm", "3 × 150 mm", "3 × 165 mm"], rows
    assert rows["Rail, length"][:2] == ["none", "none"] and len(rows["Rail, length"]) == 3, rows
    assert all(len(rows[row]) == 3 for row in ("Mensa seen", "Findings, required", "Kept", "New stone")), rows


@test
def alternatives_are_told_moment_by_moment():
    lines = footpace("compare", PARISH, "--moments", expect=(0, 1)).stdout.splitlines()
    headings = [line for line in lines[2:] if line and not line.startswith(" ") and "," in line and ":" not in line]
    assert "Elevation of the Host, kneeling" in headings and "Offertory, sitting" in headings, headings
    at = lines.index("Elevation of the Host, kneeling")
    below = [line for line in lines[at + 1:] if line.startswith("  Raised Host")]
    cells = re.split(r"\s{2,}", below[0].strip())[1:]
    assert len(cells) == 3 and all(re.match(r"\d+ of 312, \d+ %( \*)?$", cell) for cell in cells), cells
    # As the sentence of each alternative has it.
    told = footpace("sight", PARISH, "--of", "host").stdout
    assert "from %s of 312 places" % cells[0].split(" of ")[0] in told, (cells, told)


@test
def the_sun_is_told_window_by_window():
    morning = footpace("sun", PARISH, "--at", "2026-03-21T07:30Z", *WHERE, expect=0).stdout
    # By hand: some 17 hours after the equinox the sun is 0.27 degrees north of the equator, and a sundial 7.2 minutes behind
    # the clock (from memory), so it is 69.4 degrees before noon: sin h = sin 51.5 sin 0.27 + cos 51.5 cos 0.27 cos 69.4,
    # and the air raises it by 0.07.  True north lies 78 degrees to the left of liturgical east.
    height, azimuth = (float(re.search(rf"{word} ([\d.]+)°", morning)[1]) for word in ("sun is", "azimuth"))
    assert abs(height - 12.9) < 0.2 and abs(azimuth - 106.2) < 0.2, morning
    assert f"{azimuth - 78:.0f}° from liturgical east to the Epistle side" in morning, morning
    places, all_places = map(int, re.search(r"in (\d+) of (\d+) places", morning).groups())
    counted = [int(n) for n in re.findall(r"\): (\d+) places?$", morning, re.M)]
    assert places == sum(counted) > 0 and all_places == 312, morning
    assert len(re.findall(r"^    .*: row \d+, seats? \d", morning, re.M)) >= len(counted), morning
    for at, why in (("2026-06-21T12:00+01:00", "more than 30° high"), ("2026-06-21T23:30+01:00", "below the horizon")):
        assert why in footpace("sun", PARISH, "--at", at, *WHERE, expect=0).stdout, at
    # The same moment by another clock, and the other side of the world.
    assert footpace("sun", PARISH, "--at", "2026-03-21T08:30+01:00", *WHERE, expect=0).stdout.splitlines()[2:] == \
        morning.splitlines()[2:]
    assert "below the horizon" in footpace("sun", PARISH, "--at", "2026-03-21T07:30Z", "--latitude", "-51.5",
                                           "--longitude", "179.9", expect=0).stdout


@test
def the_sun_of_every_mass_is_told_by_the_brief():
    told = footpace("sun", PARISH, expect=0).stdout
    # Three Masses a week, at two equinoxes and two solstices, in the year of today; each on its own day of the week.
    times = [datetime.datetime.fromisoformat(f"{day}T{hour}{offset}") for day, hour, offset in
             re.findall(r"^Sun on (\S+), (\S+) at UTC(\S+);", told, re.M)]
    assert len(times) == 12 and len({t.year for t in times}) == 1, told
    assert [(t.isoweekday(), t.hour) for t in times] == [(6, 18)] * 4 + [(7, 8)] * 4 + [(7, 10)] * 4, told
    assert [t.month for t in times] == [3, 6, 9, 12] * 3, told
    # By the summer time of its zone, 21 June is an hour before UTC and 21 December is not.
    assert [t.utcoffset().seconds for t in times if t.month in (6, 12)] == [3600, 0] * 3, told
    # Between them it may be worse: of every Mass a line, and on the day that it names so many have the sun in their eyes.
    years = re.findall(r"^(\w+) (\d\d:\d\d): in (?:somebody's eyes on (\d+) of|nobody's eyes on any of) (\d+) days of \d+"
                       r"(?:, in most on (\S+) \((\d+)\))?$", told, re.M)
    assert [y[:2] for y in years] == [("Saturday", "18:00"), ("Sunday", "08:00"), ("Sunday", "10:30")], told
    assert all(int(y[3]) in (52, 53) for y in years) and int(years[1][2]) > 2, years
    worst = footpace("sun", PARISH, "--at", f"{years[1][4]}T08:00", expect=0).stdout
    assert f"In the eyes of people in {years[1][5]} of 312 places" in worst, (years, worst)
    # The brief's place and zone are what is otherwise typed.
    by_brief = footpace("sun", PARISH, "--at", "2026-06-21T08:00", expect=0).stdout
    assert by_brief == footpace("sun", PARISH, "--at", "2026-06-21T08:00+01:00", "--latitude", "52.2", "--longitude", "-1.3",
                                expect=0).stdout
    # A day is every Mass of its week: 17 June 2026 is a Wednesday.
    assert re.findall(r"^Sun on (\S+), (\S+) at", footpace("sun", PARISH, "--at", "2026-06-17", expect=0).stdout, re.M) == \
        [("2026-06-20", "18:00"), ("2026-06-14", "08:00"), ("2026-06-14", "10:30")]
    assert "Not in the eyes of the celebrant at the altar, who faces liturgical east, nor of the celebrant at the chair" in told


@test
def the_sun_is_drawn_for_every_mass():
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "sun.svg"
        done = footpace("sun", PARISH, "--at", "2026-03-21", "--out", out, "--scale", "333", "--ink", "grey", expect=0)
        assert "1:333 is not a scale of ISO 5455" in done.stderr, done.stderr
        pages = sorted(p.name for p in pathlib.Path(folder).iterdir())
        assert pages == ["sun-2.svg", "sun-3.svg", "sun.svg"], pages
        words = " ".join(svg_texts(out.with_name("sun-2.svg")))
        assert "1:333" in words and "2 of 3" in words, words
        coloured = footpace("sun", PARISH, "--at", "2026-03-21T08:00", "--out", "-", "--as", "svg", expect=0).stdout
        assert coloured != footpace("sun", PARISH, "--at", "2026-03-21T08:00", "--out", "-", "--as", "svg", "--ink", "safe",
                                    expect=0).stdout


@test
def sheets_of_sight_and_sun_are_drawn_as_others():
    with tempfile.TemporaryDirectory() as folder:
        sight, sun = pathlib.Path(folder) / "sight.svg", pathlib.Path(folder) / "sun.svg"
        footpace("draw", PARISH, "--sheet", "sight", "--out", sight, expect=0)
        assert "Elevation of the Host" in " ".join(svg_texts(sight)), svg_texts(sight)
        footpace("draw", PARISH, "-a", "a", "--sheet", "sun", "--out", sun, expect=0)
        # Three Masses a week at four days of the year; each bears the name of its alternative.
        pages = [sun] + [sun.with_name(f"sun-{n}.svg") for n in range(2, 13)]
        assert len(list(pathlib.Path(folder).iterdir())) == 13
        assert all("Freestanding altar on three steps" in svg_texts(page) for page in pages), svg_texts(sun)
        for sheet, shows in (("sight", "sight of the whole church"), ("sun", "sun in the whole church")):
            assert shows in footpace("draw", PARISH, "--sheet", sheet, "--whole", "--out", sun, expect=2).stderr
        assert "no Mass times" in footpace("draw", CHAPEL, "--sheet", "sun", "--out", sun, expect=2).stderr


@test
def the_sun_is_drawn_on_plan_and_section():
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "sun.svg"
        at = ("--at", "2026-03-21T07:30Z", *WHERE)
        footpace("sun", PARISH, *at, "--out", out, expect=0)
        words = " ".join(svg_texts(out))
        places = re.search(r"in \d+ of \d+ places", footpace("sun", PARISH, *at, expect=0).stdout)[0]
        assert places in words and "PLAN" in words and "SECTION ON THE AXIS" in words and "Sun" in words, words
        footpace("sun", PARISH, *at, "--out", out.with_suffix(".pdf"), "--paper", "a4", expect=0)
        assert out.with_suffix(".pdf").read_bytes().startswith(b"%PDF")
        # What is lit is outlined once each: at noon more windows shine than at night.
        noon, night = (len(re.findall("<path", footpace("sun", PARISH, "--at", f"2026-03-21T{hour}Z", *WHERE, "--out", "-",
                                                        "--as", "svg", expect=0).stdout)) for hour in ("12:00", "23:00"))
        assert noon > night, (noon, night)


@test
def cards_are_told_and_drawn():
    one = footpace("card", PARISH, "-a", "b", "--for", "sung", expect=0).stdout
    assert one.startswith("Sung Mass\n") and "Epistle side: light 1, 2, 3." in one, one
    assert one.index("Epistle side: light") < one.index("Gospel side: light"), one
    other = footpace("card", PARISH, "-a", "b", "--for", "sung", "--first", "gospel", "--servers", "2", expect=0).stdout
    assert "First server. Gospel side: light 1, 2, 3.\n" in other and "Second server. Epistle side: light 1, 2, 3." in other, other
    two = footpace("card", PARISH, "-a", "b", "--for", "low,good-friday", expect=0).stdout
    assert "2 of 6 lit" in two and "Take away\n  [ ] Crucifix." in two and "Colour: black" in two, two
    brief = footpace("card", PARISH, "-a", "b", expect=0).stdout
    assert [brief.count(t) for t in ("Low Mass", "Sunday Mass", "Requiem Mass")] == [1, 1, 0], brief
    far = footpace("card", PARISH, "-a", "b", "--for", "sung", "--pole", "0.2 m", expect=0).stdout
    assert "Candles 1, 2, 3, 4, 5 and 6 are out of reach with a pole of 200 mm: take one of " in far, far
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "cards.pdf"
        footpace("card", PARISH, "-a", "b", "--out", out, "--paper", "letter", expect=0)
        assert out.read_bytes().startswith(b"%PDF"), "no PDF"
        footpace("draw", PARISH, "-a", "b", "--sheet", "card", "--out", out, "--paper", "a4", expect=0)
        assert "altar as it is set" in footpace("draw", PARISH, "--sheet", "card", "--out", out, "--whole", expect=2).stderr
        drawn = {}
        for celebration in ([], ["--for", "good-friday"]):
            done = footpace("draw", PARISH, "-a", "b", "--sheet", "elevation", "--out", "-", "--as", "svg", *celebration, expect=0)
            drawn[len(celebration)] = done.stdout
        assert "As set for Good Friday" in drawn[2] and "As set for" not in drawn[0]
        assert drawn[2].count("<path") < drawn[0].count("<path"), "the candlesticks are still there"
        bare = footpace("check", PARISH, "-a", "b", "--for", "good-friday", "--all", expect=(0, 1)).stdout
        assert re.search("As set for +Good Friday", bare), bare[:600]
        assert "As set for" not in footpace("check", PARISH, "-a", "b", expect=(0, 1)).stdout
        assert "low, sung, solemn" in footpace("check", PARISH, "--for", "vespers", expect=2).stderr
        out = pathlib.Path(folder) / "card.svg"
        footpace("card", PARISH, "-a", "b", "--for", "sung", "--out", out, expect=0)
        texts = ET.parse(out).getroot().iter("{http://www.w3.org/2000/svg}text")
        told = ["".join(t.itertext()) for t in texts]
        assert {"Sung Mass", "1", "2", "3", "4", "5", "6", "A", "B"} <= set(told), told


WORKS = """  <works stone="marble" timber="oak" metal="brass" slab="40" longest="1500" bears="5" burns="22" bolt="0" warp="0" weft="0"
    currency="EUR">
    <rate kind="altar" what="mensa" per="m3" amount="5200"/>
    <rate kind="footpace" what="treads" per="ft" amount="50"/>
    <rate kind="ambo" what="setting up" per="one" amount="9"/>
  </works>
</project>"""


def with_works(works):
    """The parish, as if it had told these works."""
    return re.sub(r"  <works .*?</works>\n(  <capacity .*?/>\n)?", "", PARISH.read_text(), flags=re.S).replace("</project>", works)


@test
def linen_is_told_as_text_and_table_and_drawn():
    cloth = ("--bolt", "1500", "--warp", "6", "--weft", "2.5")
    text = footpace("linen", PARISH, "-a", "b", *cloth, expect=0).stdout
    assert re.match(r"Buy \d+(\.\d)? m of linen 1.500.mm wide, and 0\.3 m more for trying first\. .{4,8}.mm of it are cut \(no layout takes less\)", text), text
    assert "6 % along the bolt (the warp), 2.5 % across it" in text and "Try a piece first" in text and "Corporal" in text, text
    assert "Communion cloth" not in text, text  # its rail has none
    rows = list(csv.DictReader(io.StringIO(footpace("linen", PARISH, "-a", "b", *cloth, "--as", "csv", expect=0).stdout)))
    top = [row for row in rows if row["piece"].startswith("Top cloth")][0]
    # By the formula: hems of 2 in at the ends and 1 in at the sides, 8 mm turned in.
    along, across = ((float(top["finished_length"]) + 2 * (50.8 + 8)), (float(top["finished_width"]) + 2 * (25.4 + 8)))
    cut = (along / 0.94, across / 0.975) if top["turned"] == "no" else (across / 0.94, along / 0.975)
    assert abs(float(top["cut_along"]) - cut[0]) < 0.06 and abs(float(top["cut_across"]) - cut[1]) < 0.06, top
    used = max(float(row["at_along"]) + float(row["cut_along"]) for row in rows)
    assert abs(used - float(re.sub(r"\D", "", re.search(r"first\. (.+?).mm of it are", text)[1]))) <= 1.1, used
    assert all(float(row["at_across"]) + float(row["cut_across"]) <= 1500.05 for row in rows)
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "linen.svg"
        footpace("linen", PARISH, "-a", "b", *cloth, "--out", out, expect=0)
        words = svg_texts(out)
        for row in rows:
            assert any(re.match(row["letter"] + r"\b", text) for text in words), row
        words = " ".join(words)
        kept = pathlib.Path(folder) / "kept.footpace"
        kept.write_text(with_works(WORKS.replace('bolt="0" warp="0" weft="0"', 'bolt="1500" warp="0.06" weft="0.025"')))
        assert footpace("linen", kept, "-a", "b", expect=0).stdout == text
        footpace("draw", kept, "-a", "b", "--sheet", "linen", "--out", out, expect=0)
        assert " ".join(svg_texts(out)).count("Top cloth") == words.count("Top cloth")
        kept.write_text(with_works(WORKS.replace('bolt="0" warp="0" weft="0"', 'bolt="500" warp="0.06" weft="0.025" wide="joined"')))
        asked = footpace("linen", PARISH, "-a", "b", "--bolt", "500 mm", "--warp", "6", "--weft", "2.5", "--join", expect=0).stdout
        assert "cut here in" in asked and footpace("linen", kept, "-a", "b", expect=0).stdout == asked
    narrow = ("linen", PARISH, "-a", "b", "--bolt", "500 mm", "--warp", "6", "--weft", "2.5")
    assert "needs a bolt" in footpace(*narrow, expect=0).stdout
    joined = footpace(*narrow, "--join", expect=0).stdout
    assert "cut here in" in joined and "width 2 of 3" in joined, joined
    many = footpace("linen", PARISH, "-a", "b", *cloth, "--small", "purificators=12, amices=2,corporals=0", expect=0).stdout
    assert "Purificator 12," in many and "Amice 2," in many and "Corporal" not in many, many


@test
def a_bolt_is_read_in_the_units_of_the_project_and_that_is_told():
    said = footpace("linen", CHAPEL, "--bolt", "1500", "--warp", "6", "--weft", "2.5", expect=2).stderr
    assert "“1500” was read in inches; for millimetres write “1500 mm”" in said, said
    footpace("linen", CHAPEL, "--bolt", "1500 mm", "--warp", "6", "--weft", "2.5", expect=0)
    said = footpace("linen", PARISH, "--bolt", "60", "--warp", "6", "--weft", "2.5", expect=2).stderr
    assert "“60” was read in millimetres; for inches write “60 in”" in said, said


@test
def schedules_are_told_as_text_and_table_and_on_sheets():
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "works.footpace"
        file.write_text(with_works(WORKS))
        text = footpace("schedule", file, "-a", "b", expect=0).stdout
        rows = list(csv.DictReader(io.StringIO(footpace("schedule", file, "-a", "b", "--as", "csv", expect=0).stdout)))
        new = [row for row in rows if row["work"] == "new"]
        mensa = [row for row in new if row["what"] == "mensa"][0]
        # A slab of stone: its volume is its size, its mass by marble of 27.2 kN/m3 (ASCE 7 Table C3-1), its cost by its volume.
        volume = float(mensa["length"]) * float(mensa["width"]) * float(mensa["thickness"]) / 1e9
        assert abs(float(mensa["volume_m3"]) - volume) < 2e-5, mensa
        assert abs(float(mensa["mass_kg"]) - volume * 27200 / 9.80665) < 0.1, mensa
        # Reckoned from the amount that is printed, to the cent; so is their sum.
        assert mensa["cost"] == f"{round(volume, 3) * 5200:.2f}" and float(mensa["amount"]) == round(volume, 3), mensa
        treads = [row for row in new if row["what"].startswith("treads")]
        assert treads and all(float(row["length"]) <= 1500 and row["rate_per"] == "ft" for row in treads), treads
        for row in treads:
            assert abs(float(row["cost"]) - float(row["amount"]) / 0.3048 * 50) < 0.02, row
        total = sum(float(row["cost"]) for row in rows if row["cost"])
        told = re.sub(r"\s|EUR", "", re.search(r"In all (.+?) by the rates", text)[1])
        assert told == f"{total:.2f}", (told, total)
        assert "lines not priced" in text and re.search(r"\bnot priced$", text, re.M), text
        compared = footpace("compare", file).stdout
        assert re.search(r"Cost by the rates typed.*not priced", compared) and "Cost" not in footpace("compare", FAN).stdout, compared
        candles = [row for row in new if row["burns_h"]]
        assert candles and all(abs(float(row["burns_h"]) - float(row["length"]) / 22) < 0.01 for row in candles), candles
        assert "times the rating" in text and "licensed engineer decides" in text, text
        some = list(csv.DictReader(io.StringIO(
            footpace("schedule", file, "-a", "b", "--of", "steps", "--only", "removed", "--as", "csv", expect=0).stdout)))
        assert some == [row for row in rows if row["heading"] == "steps" and row["work"] == "removed"] and some
        # Of what it is told alone: no weight of another material.
        of_steps = footpace("schedule", file, "-a", "b", "--of", "steps", expect=0).stdout
        assert "Weights in kN/m³: " in of_steps and not re.search("hollow|Oak|Brass", of_steps), of_steps
        out = pathlib.Path(folder) / "schedule.pdf"
        footpace("schedule", file, "-a", "b", "--out", out, expect=0)
        assert "how wide the bolt of linen is" in footpace("draw", file, "--sheet", "linen", "--out", out, expect=2).stderr
        footpace("draw", file, "-a", "b", "--sheet", "schedule", "--out", out, expect=0)
        words = subprocess.run(["pdftotext", "-layout", out, "-"], capture_output=True, text=True, check=True).stdout
        assert "Footpace and steps" in words and "chair" in words and "nave floor" not in words.lower(), words
        footpace("schedule", file, "-a", "b", "--out", out, expect=0)
        words = subprocess.run(["pdftotext", "-layout", out, "-"], capture_output=True, text=True, check=True).stdout
        for row in rows:
            # In a narrow column a name goes on in the next line.
            assert all(word in words for word in (row["thing"] + " " + row["what"].split(",")[0]).split()), row
        assert "Steps and stone, continued" in words or "New, continued" in words, words


def marks_of(text):
    """S1 to S3 and S7 of "S1–S3, S7"."""
    marks = []
    for run in filter(None, re.split(r",\s*", text)):
        first, _, last = run.replace("S", "").partition("–")
        marks += range(int(first), int(last or first) + 1)
    return marks


@test
def a_table_of_schedules_sums_to_what_is_told():
    """Read by another program: sums of masses and costs by heading, and sizes that make the volumes."""
    for sample, alternative in ((PARISH, "a"), (PARISH, "b"), (CHAPEL, "a")):
        pounds = sample == CHAPEL
        text = footpace("schedule", sample, "-a", alternative, "--only", "new", expect=0).stdout
        rows = list(csv.DictReader(io.StringIO(footpace("schedule", sample, "-a", alternative, "--only", "new", "--as", "csv",
                                                        expect=0).stdout)))
        steps = [row for row in rows if row["heading"] == "steps"]
        told = re.search(r"Steps and stone\n(?:  .*\n)*?  In all(.*)", text)[1]
        mass = sum(float(row["mass_kg"]) for row in steps if row["mass_kg"]) / (0.45359237 if pounds else 1)
        cost = sum(float(row["cost"]) for row in steps if row["cost"])
        figures = [float(re.sub(r"[^\d.]", "", figure)) for figure in re.findall(r"[\d.\u202f]+(?=\xa0)", told)]
        assert abs(figures[0] - cost) < 0.005 and abs(figures[1] - mass) <= 0.51, (figures, cost, mass)
        for row in steps:
            if row["thickness"]:
                size = float(row["length"]) * float(row["width"]) * float(row["thickness"]) * float(row["pieces"]) / 1e9
                # Sizes are told to a tenth of a millimetre.
                assert abs(float(row["volume_m3"]) - size) < 0.004 * size + 1e-5, row


@test
def each_slab_of_the_schedules_is_on_the_laying_of_the_stone():
    with tempfile.TemporaryDirectory() as folder:
        for sample, alternative in ((PARISH, "a"), (PARISH, "b"), (CHAPEL, "a")):
            rows = list(csv.DictReader(io.StringIO(footpace("schedule", sample, "-a", alternative, "--as", "csv", expect=0).stdout)))
            marks = sorted(mark for row in rows for mark in marks_of(row["marks"]))
            assert marks == list(range(1, len(marks) + 1)) and len(marks) > 20, marks
            assert all(len(marks_of(row["marks"])) == int(row["pieces"]) for row in rows if row["marks"]), rows
            assert not any(row["marks"] for row in rows if row["work"] != "new"), rows
            out = pathlib.Path(folder) / f"laying-{alternative}.pdf"
            footpace("draw", sample, "-a", alternative, "--sheet", "laying", "--out", out, expect=0)
            words = subprocess.run(["pdftotext", "-layout", out, "-"], capture_output=True, text=True, check=True).stdout
            drawn = {int(mark) for mark in re.findall(r"\bS(\d+)\b", words)}
            assert drawn >= set(marks), set(marks) - drawn
            if (sample, alternative) == (PARISH, "b"):
                stone = [row for row in rows if row["what"] == "mensa"][0]
                assert f"mensa, {stone['marks']}; {float(stone['thickness']):.0f} mm thick" in words, words
                assert "middle on the" in re.sub(r"\s+", " ", words) and "slabs 40 mm; nosing 20 mm" in words, words
        assert "nothing new" in footpace("draw", FAN, "-a", "existing", "--sheet", "laying", "--out", out, expect=2).stderr
        assert "does not fit" in footpace("draw", PARISH, "-a", "b", "--sheet", "laying", "--scale", "1", "--out", out,
                                          expect=2).stderr


@test
def bad_use_and_bad_input_give_two_and_a_reason():
    with tempfile.TemporaryDirectory() as folder:
        broken = pathlib.Path(folder) / "broken.footpace"
        broken.write_text("<project")
        out = pathlib.Path(folder) / "x.pdf"
        for arguments in (
            ("check", "no-such-file.footpace"),
            ("check", broken),
            ("check", folder, "--as", "json"),
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
            ("draw", PARISH, "--sheet", "plan", "--out", f"{folder}/.pdf"),
            ("draw", PARISH, "--sheet", "plan", "--out", f"{folder}/x.docx"),
            ("draw", PARISH, "--sheet", "plan", "--out", folder),
            ("draw", PARISH, "--sheet", "plan", "--out", "-"),
            ("draw", PARISH, "--sheet", "plan", "--out", "-", "--as", "docx"),
            ("draw", PARISH, "--sheet", "plan", "--out", out, "--ink", "gold"),
            ("draw", PARISH, "--sheet", "plan", "--out", out, "--along", "1e400"),
            ("draw", PARISH, "--sheet", "plan", "--out", out, "--across", "far"),
            ("draw", PARISH, "--sheet", "plan", "--out", out, "--tiles", "a9"),
            ("draw", PARISH, "--out", out),
            ("draw", PARISH, "--sheet", "compare", "--out", out, "--alternative", "a"),
            ("draw", PARISH, "--sheet", "compare", "--out", out, "--findings"),
            ("draw", PARISH, "--sheet", "levels", "--out", out, "--findings"),
            ("draw", PARISH, "--sheet", "levels", "--out", out, "--whole"),
            ("draw", PARISH, "--sheet", "levels", "--out", out, "--along", "0"),
            ("draw", PARISH, "--sheet", "levels", "--out", out, "--without", "seats"),
            ("draw", PARISH, "--pew", "99,1", "--out", out),
            ("draw", PARISH, "--pew", "no such block,1,1", "--out", out),
            ("draw", PARISH, "--pew", "gallery", "--out", out),
            ("draw", PARISH, "--pew", "6", "--out", out),
            ("draw", PARISH, "--pew", "6,0", "--out", out),
            ("draw", PARISH, "--pew", ",", "--out", out),
            ("draw", PARISH, "--pew", "front", "--sheet", "plan", "--out", out),
            ("draw", PARISH, "--pew", "front", "--scale", "50", "--out", out),
            ("draw", PARISH, "--pew", "front", "--when", "vespers", "--out", out),
            ("draw", PARISH, "--pew", "front", "--look", "organ", "--out", out),
            ("draw", PARISH, "--pew", "strip", "--alternative", "b", "--out", out),
            ("draw", PARISH, "--sheet", "plan", "--when", "offertory", "--out", out),
            *(("draw", PARISH, "--sheet", "plan", "--out", out, "--scale", scale)
              for scale in ("", "0", "-50", "1:", "1:0", "2:1", "0x10", "1e3", "33.5", "99999", "1:50 ")),
            ("check", PARISH, "--alternative", ""),
            ("compare", PARISH, PARISH),
            ("check", PARISH, "--as"),
            ("compare", broken),
            ("card", PARISH, "--for", "vespers"),
            ("draw", PARISH, "--sheet", "plan", "--out", out, "--for", "vespers"),
            ("card", PARISH, "--servers", "3"),
            ("card", PARISH, "--first", "north"),
            ("card", PARISH, "--pole", "long"),
            ("card", PARISH, "--pole", "-1"),
            ("card", PARISH, "--out", out, "--paper", "a1"),
            ("card", PARISH, "--out", out, "--ink", "sepia"),
            ("card", PARISH, "--out", out, "--as", "json"),
            ("schedule", PARISH, "--of", "roof"),
            ("schedule", PARISH, "--only", "old"),
            ("schedule", PARISH, "--as", "json"),
            ("schedule", PARISH, "--out", out, "--paper", "a9"),
            ("schedule", PARISH, "--of", "rail", "--only", "moved", "--out", out),
            ("schedule", broken),
            ("linen", FAN),
            ("linen", FAN, "--bolt", "1500", "--warp", "6"),
            ("linen", PARISH, "--bolt", "1500", "--warp", "60", "--weft", "2"),
            ("linen", PARISH, "--bolt", "-3", "--warp", "6", "--weft", "2"),
            ("linen", PARISH, "--bolt", "wide", "--warp", "6", "--weft", "2"),
            ("linen", PARISH, "--bolt", "1500", "--warp", "6", "--weft", "2", "--small", "napkins=2"),
            ("linen", PARISH, "--bolt", "1500", "--warp", "6", "--weft", "2", "--small", "palls=-1"),
            ("linen", PARISH, "--bolt", "1500", "--warp", "6", "--weft", "2", "--as", "json"),
            ("linen", PARISH, "--bolt", "1500", "--warp", "6", "--weft", "2", "--out", out, "--scale", "1"),
            ("linen", broken, "--bolt", "1500", "--warp", "6", "--weft", "2"),
            ("sun", CHAPEL),
            ("sun", CHAPEL, *WHERE),
            ("sun", CHAPEL, "--at", "2026-06-21", *WHERE),
            ("sun", CHAPEL, "--at", "2026-06-21T09:30", *WHERE),
            ("sun", CHAPEL, "--at", "2026-06-21T09:30Z"),
            ("sun", PARISH, "--at", "2026-02-30"),
            ("sun", PARISH, "--at", "midsummer"),
            ("sun", PARISH, "--at", "2026-06-21", "--out", out, "--scale", "1:0"),
            ("sun", PARISH, "--at", "2026-06-21", "--out", out, "--scale", "5"),
            ("sun", PARISH, "--at", "2026-06-21", "--out", out, "--ink", "green"),
            ("sun", PARISH, "--at", "1826-06-21T09:30Z", *WHERE),
            ("sun", PARISH, "--at", os.fsdecode(b"2026\xff"), *WHERE),
            ("sun", PARISH, "--at", "2026-06-21T09:30Z", "--latitude", "51.5"),
            ("sun", PARISH, "--at", "2026-06-21T09:30Z", "--latitude", "91", "--longitude", "0"),
            ("sun", PARISH, "--at", "2026-06-21T09:30Z", "--latitude", "nan", "--longitude", "0"),
            ("sun", PARISH, "--at", "2026-06-21T09:30Z", "--latitude", "0", "--longitude", "east"),
            ("sun", PARISH, "--at", "2026-06-21T09:30Z", *WHERE, "--alternative", "zz"),
            ("sun", PARISH, "--at", "2026-06-21T09:30Z", *WHERE, "--as", "json"),
            ("sun", PARISH, "--at", "2026-06-21T09:30Z", *WHERE, "--as", "pdf"),
            ("sun", PARISH, "--at", "2026-06-21T09:30Z", *WHERE, "--out", out, "--as", "text"),
            ("sun", PARISH, "--at", "2026-06-21T09:30Z", *WHERE, "--out", out, "--paper", "a9"),
            ("sun", PARISH, "--at", "2026-06-21T09:30Z", *WHERE, "--out", f"{folder}/x.docx"),
            ("sun", PARISH, "--at", "2026-06-21T09:30Z", *WHERE, "--out", "/no/such/x.pdf"),
            ("sun", broken, "--at", "2026-06-21T09:30Z", *WHERE),
        ):
            done = footpace(*arguments, expect=2)
            assert done.stderr.startswith("footpace: "), arguments
            assert done.stdout == "", arguments
            assert not out.exists(), arguments


@test
def errors_say_what_was_given_and_what_is_expected():
    for arguments, says in (
        (("check", PARISH, "--as", "prose"), "--as is “prose”, expected text, json or csv"),
        (("draw", PARISH), "--sheet is missing, expected plan"),
        (("draw", PARISH, "--sheet", "plan"), "--out is missing"),
        (("draw", PARISH, "--sheet", "plan", "--out", "x.pdf", "--paper", "a9"), "--paper is “a9”, expected a4"),
        (("draw", PARISH, "--sheet", "plan", "--out", "x.pdf", "--scale", "33.5"), "--scale is “33.5”, expected"),
        (("draw", PARISH, "--sheet", "plan", "--out", "/no/such/x.pdf"), "there is no folder “/no/such”"),
        (("check",), "FILE is missing"),
        (("compare", "a", "b"), "was given 2"),
        (("check", ""), "FILE is missing"),
        (("draw", PARISH, "--sheet", "plan", "--as", "pdf", "--out", ""), "--out is missing"),
        (("draw", PARISH, "--sheet", "plan", "--as", "pdf", "--out", "/"), "“/” could not be written: it is a folder"),
        (("draw", PARISH, "--sheet", "compare", "--scale", "1", "--out", "x.pdf"), "does not fit A3 at 1:1"),
        (("draw", PARISH, "--sheet", "levels", "--scale", "1", "--out", "x.pdf"), "do not fit this paper at 1:1; the largest"),
    ):
        assert says in footpace(*arguments, expect=2).stderr, (arguments, says)
    # In a locale that cannot encode what was typed.
    done = subprocess.run([FOOTPACE, "check", str(PARISH), "--alternative", "Höhe"], capture_output=True,
                          env={**NO_DISPLAY, "LC_ALL": "C"}, timeout=300)
    assert done.returncode == 2 and "there is no alternative “Höhe”".encode() in done.stderr, done.stderr


@test
def a_full_disk_is_told():
    if not os.path.exists("/dev/full"):
        return
    for arguments in (("check", PARISH), ("compare", PARISH), ("--help",), ("draw", "--help"),
                      ("draw", PARISH, "--sheet", "plan", "--as", "svg", "--out", "-")):
        with open("/dev/full", "w") as full:
            done = subprocess.run([FOOTPACE, *map(str, arguments)], stdout=full, stderr=subprocess.PIPE, text=True,
                                  env=NO_DISPLAY, timeout=300)
        assert done.returncode == 2 and "standard output could not be written" in done.stderr, arguments


@test
def a_scale_that_is_no_standard_is_drawn_and_told():
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "x.svg"
        done = footpace("draw", PARISH, "--sheet", "elevation", "--out", out, "--scale", "1:133", expect=0)
        assert "1:133 is not a scale of ISO 5455" in done.stderr, done.stderr
        assert "1:133" in "".join(ET.parse(out).getroot().itertext())
        done = footpace("draw", PARISH, "--sheet", "elevation", "--out", out, "--scale", "200", expect=0)
        assert done.stderr == "", done.stderr


def svg_texts(path):
    return ["".join(t.itertext()) for t in ET.parse(path).iter("{http://www.w3.org/2000/svg}text")]


@test
def sections_are_cut_where_it_is_told():
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "s.svg"
        footpace("draw", PARISH, "--sheet", "section", "--along=-2.5m", "--turned", "--out", out, expect=0)
        texts = svg_texts(out)
        assert "SECTION A–A, FROM THE EPISTLE SIDE" in texts, texts
        assert any("cut 2500 mm to the Gospel side" in t for t in texts), texts
        footpace("draw", PARISH, "--sheet", "cross", "--across", "2000", "--turned", "--out", out, expect=0)
        assert "SECTION B–B, FACING WEST" in svg_texts(out)
        footpace("draw", PARISH, "--sheet", "plan", "--along", "1200", "--across", "2000", "--out", out, expect=0)
        texts = svg_texts(out)
        assert texts.count("A") == 2 and texts.count("B") == 2, texts
        # In the nave too, which a plan otherwise leaves out.
        footpace("draw", PARISH, "--sheet", "plan", "--across=-6000", "--out", out, expect=0)
        assert svg_texts(out).count("B") == 2, svg_texts(out)
        footpace("draw", PARISH, "--sheet", "plan", "--along=-5500", "--out", out, expect=0)
        assert svg_texts(out).count("A") == 2, svg_texts(out)
        footpace("draw", PARISH, "--sheet", "plan", "--along", "1200", "--turned", "--out", out, expect=0)
        footpace("draw", PARISH, "--sheet", "board", "--along", "1200", "--out", out, expect=0)
        assert svg_texts(out).count("A") == 2, svg_texts(out)


# What each has nothing to do with: sections across are not on a board, and an elevation is no section.
CUTS = {"--along": ("plan", "section", "sections", "board"), "--across": ("plan", "cross", "sections"),
        "--turned": ("plan", "section", "cross", "sections")}


@test
def a_cut_that_a_sheet_does_not_show_is_refused():
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "s.svg"
        for option, sheets in CUTS.items():
            for sheet in {"plan", "elevation", "section", "cross", "sections", "board", "compare"} - set(sheets):
                value = [] if option == "--turned" else ["1200"]
                done = footpace("draw", PARISH, "--sheet", sheet, option, *value, "--out", out, expect=2)
                assert f"{option} does not go with --sheet {sheet}; it goes with plan, {sheets[1]}" in done.stderr, done.stderr
                assert not out.exists(), (sheet, option)
        done = footpace("draw", PARISH, "--sheet", "plan", "--turned", "--out", out, expect=2)
        assert "--turned goes with --sheet plan only where" in done.stderr, done.stderr
        # The page set-up that is kept names the sheet as well as --sheet does.
        project = pathlib.Path(folder) / "p.footpace"
        page = ('<page sheet="%s" paper="a3" lies="landscape" scale="0" whole="no" findings="no" ink="grey" without="" '
                'tiles="none" from="gospel" across="2000" facing="east"/>')
        project.write_text(PARISH.read_text().replace("</project>", page % "elevation" + "</project>"))
        done = footpace("draw", project, "--along", "1200", "--out", out, expect=2)
        assert "--along does not go with --sheet elevation" in done.stderr, done.stderr
        project.write_text(PARISH.read_text().replace("</project>", page % "cross" + "</project>"))
        footpace("draw", project, "--turned", "--out", out, expect=0)
        assert "SECTION B–B, FACING WEST" in svg_texts(out), svg_texts(out)


@test
def a_cut_beyond_the_church_is_refused():
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "s.svg"
        for option, sheet in (("--along", "section"), ("--across", "cross"), ("--along", "plan"), ("--across", "plan")):
            told = set()
            for far in ("60m", "-60m"):
                done = footpace("draw", PARISH, "--sheet", sheet, f"{option}={far}", "--out", out, expect=2)
                assert f"{option} is “{far}”, expected a length from " in done.stderr, done.stderr
                assert not out.exists(), (option, far)
                told.add(tuple(float(x.replace("\u202f", "").replace("−", "-"))
                               for x in re.search(r"from (.+?) mm to (.+?) mm", done.stderr).groups()))
            (low, high), = told
            # So far it may be, and no farther.
            for at, expected in ((low, 0), (high, 0), (low - 1, 2), (high + 1, 2)):
                footpace("draw", PARISH, "--sheet", sheet, f"{option}={at}", "--out", out, expect=expected)
            out.unlink()


@test
def what_is_not_wanted_is_left_out():
    with tempfile.TemporaryDirectory() as folder:
        out, less = pathlib.Path(folder) / "s.svg", pathlib.Path(folder) / "l.svg"
        footpace("draw", PARISH, "-a", "b", "--sheet", "plan", "--out", out, expect=0)
        footpace("draw", PARISH, "-a", "b", "--sheet", "plan", "--without", "names,dimensions,removed", "--ink", "grey",
                 "--out", less, expect=0)
        assert len(svg_texts(less)) < len(svg_texts(out)) - 10, svg_texts(less)
        assert not any(re.fullmatch(r"\d{3,}", t) for t in svg_texts(less)), svg_texts(less)
        assert "removed" in svg_texts(out) and "removed" not in svg_texts(less)
        colours = set(re.findall(r"#([0-9a-f]{6})", less.read_text()))
        assert colours and all(c[:2] == c[2:4] == c[4:] for c in colours), colours
        done = footpace("draw", PARISH, "--sheet", "plan", "--without", "names,roof", "--out", out, expect=2)
        assert "“roof”" in done.stderr and "dimensions" in done.stderr, done.stderr


@test
def a_large_sheet_goes_on_pages_to_be_joined():
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "t.pdf"
        # The plan fits no A3 at 1:20, so it is drawn on a larger sheet; A4 shows 194 mm of it at a time.
        footpace("draw", PARISH, "--sheet", "plan", "--scale", "20", "--tiles", "a4", "--out", out, expect=0)
        pages = re.findall(rb"/MediaBox \[ 0 0 (\S+) (\S+) \]", out.read_bytes())
        assert len(pages) > 4, len(pages)
        for page in pages:
            assert sorted(round(float(x)) for x in page) == [595, 842], page
        footpace("draw", PARISH, "--sheet", "plan", "--scale", "20", "--out", out, expect=2)
        done = footpace("draw", PARISH, "--sheet", "sections", "--scale", "1", "--tiles", "a4", "--out", out, expect=2)
        assert "The sheet of both sections does not fit 4A0 landscape at 1:1; the largest" in done.stderr, done.stderr
        footpace("draw", PARISH, "--sheet", "plan", "--tiles", "a4", "--out", pathlib.Path(folder) / "t.svg", expect=2)


@test
def what_is_not_said_is_as_it_was_printed_last():
    page = ('<page sheet="cross" paper="a4" lies="portrait" scale="0" whole="no" findings="no" ink="grey" '
            'without="dimensions names" tiles="none" from="gospel" across="2000" facing="west"/>')
    with tempfile.TemporaryDirectory() as folder:
        out, project = pathlib.Path(folder) / "s.svg", pathlib.Path(folder) / "p.footpace"
        project.write_text(PARISH.read_text().replace("</project>", page + "</project>"))
        footpace("draw", project, "--out", out, expect=0)
        texts = svg_texts(out)
        assert "SECTION B–B, FACING WEST" in texts and "A4" in texts, texts
        assert 'width="210mm"' in out.read_text()
        footpace("draw", project, "--out", out, "--paper", "a3", "--across", "3000", expect=0)
        assert 'width="420mm"' in out.read_text()
        assert any("3000 mm into the sanctuary" in t for t in svg_texts(out)), svg_texts(out)
        # What was kept and does not go with what is asked for now is no fault of who asks.
        project.write_text(PARISH.read_text().replace("</project>", page.replace('"none"', '"a4"') + "</project>"))
        footpace("draw", project, "--out", out, expect=0)
        assert "SECTION B–B, FACING WEST" in svg_texts(out)
        compared = page.replace('"cross"', '"compare"').replace('findings="no"', 'findings="yes"')
        project.write_text(PARISH.read_text().replace("</project>", compared + "</project>"))
        footpace("draw", project, "--out", out, "--paper", "a2", expect=0)
        project.write_text(PARISH.read_text().replace("</project>", page + "</project>"))
        # A sheet that is named is drawn as ever.
        footpace("draw", project, "--sheet", "plan", "--out", out, expect=0)
        assert 'width="420mm"' in out.read_text() and "B" not in svg_texts(out)


@test
def names_of_forms_and_papers_are_read_in_any_case():
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "X.PDF"
        footpace("draw", PARISH, "--sheet", "Elevation", "--paper", "A4", "--out", out, expect=0)
        assert out.read_bytes().startswith(b"%PDF-")
        bare = pathlib.Path(folder) / "drawing"
        footpace("draw", PARISH, "--sheet", "plan", "--as", "svg", "--out", bare, expect=0)
        assert bare.read_bytes().startswith(b"<?xml")


@test
def a_drawing_goes_to_standard_output():
    for form, head in (("pdf", b"%PDF-"), ("svg", b"<?xml"), ("png", b"\x89PNG")):
        done = subprocess.run([FOOTPACE, "draw", str(PARISH), "--sheet", "plan", "--as", form, "--out", "-"],
                              capture_output=True, env=NO_DISPLAY, timeout=300)
        assert done.returncode == 0 and done.stdout.startswith(head), (form, done.stderr)
    assert not pathlib.Path("-").exists()


@test
def a_failed_drawing_keeps_the_old_file():
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "x.pdf"
        out.write_bytes(b"old")
        footpace("draw", PARISH, "--sheet", "plan", "--out", out, "--scale", "1:1", "--paper", "a4", expect=2)
        assert out.read_bytes() == b"old"


@test
def a_drawing_never_takes_the_place_of_a_project():
    with tempfile.TemporaryDirectory() as folder:
        project, twin = pathlib.Path(folder) / "p.footpace", pathlib.Path(folder) / "p.pdf"
        project.write_bytes(CHAPEL.read_bytes())
        os.link(project, twin)
        for out, says in ((project, "ending"), (twin, "is the project that is drawn"),
                          (pathlib.Path(folder) / "other.footpace", "ending")):
            done = footpace("draw", project, "--sheet", "plan", "--as", "pdf", "--out", out, expect=2)
            assert says in done.stderr, done.stderr
        assert project.read_bytes() == twin.read_bytes() == CHAPEL.read_bytes()
        assert sorted(os.listdir(folder)) == ["p.footpace", "p.pdf"]


@test
def where_files_may_not_grow_nothing_is_left_behind():
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "x.pdf"
        out.write_bytes(b"old")
        done = subprocess.run([FOOTPACE, "draw", str(CHAPEL), "--sheet", "plan", "--out", str(out)], capture_output=True,
                              text=True, env=NO_DISPLAY, timeout=300,
                              preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (4096, 4096)))
        assert done.returncode == 2 and "could not be written" in done.stderr, done
        assert "File too large" in done.stderr and done.stderr.count("x.pdf") == 1, done.stderr
        assert out.read_bytes() == b"old" and os.listdir(folder) == ["x.pdf"]


@test
def a_reader_that_stops_early_leaves_nothing_behind():
    with tempfile.TemporaryDirectory() as folder:
        env = dict(NO_DISPLAY, TMPDIR=folder)
        with subprocess.Popen([FOOTPACE, "draw", str(PARISH), "--sheet", "plan", "--as", "pdf", "--out", "-"],
                              stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=env) as running:
            running.stdout.close()
            running.wait(timeout=300)
        assert running.returncode != 0 and os.listdir(folder) == [], (running.returncode, os.listdir(folder))


@test
def a_drawing_goes_where_a_link_leads():
    with tempfile.TemporaryDirectory() as folder:
        link, target = pathlib.Path(folder) / "link.pdf", pathlib.Path(folder) / "target.pdf"
        link.symlink_to("target.pdf")  # nothing is there yet
        for _ in range(2):
            footpace("draw", PARISH, "--sheet", "plan", "--out", link, expect=0)
            assert link.is_symlink() and target.read_bytes().startswith(b"%PDF-")
        target.chmod(0o600)
        footpace("draw", PARISH, "--sheet", "plan", "--out", link, expect=0)
        assert target.stat().st_mode & 0o777 == 0o600, "what was private stays so"
        circle = pathlib.Path(folder) / "circle.pdf"
        circle.symlink_to("circle.pdf")
        footpace("draw", PARISH, "--sheet", "plan", "--out", circle, expect=2)
        assert circle.is_symlink()


@test
def what_a_stranger_wrote_steers_no_terminal():
    with tempfile.TemporaryDirectory() as folder:
        bad = pathlib.Path(folder) / "bad.footpace"
        for evil in ("x" * 39 + "ü" * 9, "1&#10;2", "1&#9;2", "1&#x9b;31m2", "1&#x7f;2"):
            bad.write_text(re.sub(r'(<altar [^>]*?) x="[^"]*"', rf'\1 x="{evil}"', PARISH.read_text(), count=1))
            done = footpace("check", bad, expect=2)  # which must be UTF-8, wherever a long word was cut
            assert done.stderr.count("\n") == 1 and done.stderr.strip().isprintable(), repr(done.stderr)


@test
def in_all_samples_numbers_name_what_they_count_and_findings_say_where():
    for sample in sorted(SAMPLES.glob("*.footpace")):
        proposed = [a.get("id") for a in ET.parse(sample).getroot().iter() if a.tag.endswith("}alternative")][-1]
        done = footpace("check", sample, "--alternative", proposed, "--as", "json", expect=(0, 1))
        for finding in json.loads(done.stdout)["findings"]:
            text = finding["measured"]["text"]
            assert not re.fullmatch(r"[\d.]+", text), (finding["rule"], text)
            assert not re.fullmatch(r"(at (least|most) )?[\d.]+", finding["limit"]), finding["limit"]
            assert not re.search(r"\b1 (places|steps|seats|candles|rows|altars)\b", text), text
            if finding["found"] == "short" and finding["where"]["item"]:
                assert finding["where"]["text"], finding["rule"]


@test
def many_projects_give_a_row_each_and_one_that_is_bad_stops_none():
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        (folder / "deanery" / "two").mkdir(parents=True)
        for name in ("a.footpace", "deanery/b.footpace", "deanery/two/c.footpace"):
            (folder / name).write_bytes(CHAPEL.read_bytes())
        (folder / "deanery" / "bad.footpace").write_text("<project")
        (folder / "deanery" / "note.txt").write_text("no project")
        (folder / "deanery" / "round").symlink_to(folder)
        done = footpace("check", folder, "--as", "csv", expect=2)
        rows = list(csv.DictReader(io.StringIO(done.stdout)))
        proposals = len([a for a in ET.parse(CHAPEL).getroot().iter() if a.tag.endswith("}alternative")])
        files = [str(pathlib.Path(row["file"]).relative_to(folder)) for row in rows]
        assert files == (["a.footpace"] * proposals + ["deanery/b.footpace"] * proposals + ["deanery/bad.footpace"]
                         + ["deanery/two/c.footpace"] * proposals), files
        bad = [row for row in rows if row["not checked"]]
        assert len(bad) == 1 and "bad.footpace" in bad[0]["file"] and bad[0]["held"] == ""
        one = json.loads(footpace("check", CHAPEL, "--as", "json", expect=(0, 1)).stdout)
        first = rows[0]
        for weight in ("required", "recommended", "customary"):
            assert int(first[weight]) == one["summary"]["short"][weight]
        assert int(first["held"]) == one["summary"]["held"] and first["first"] == one["findings"][0]["title"]
        assert first["short"].split() == [f"{f['book']}:{f['rule']}" for f in one["findings"] if f["found"] == "short"]
        plain = footpace("check", folder / "a.footpace", folder / "deanery" / "b.footpace", expect=(0, 1)).stdout
        assert plain.count("rules held") == 2 * proposals
        assert "one project" in footpace("check", folder, "--as", "json", expect=2).stderr
        assert "no such alternative" in footpace("check", folder, "--alternative", "nowhere", expect=2).stdout


@test
def any_job_runner_gives_the_rows_that_one_process_gives():
    samples = sorted(map(str, SAMPLES.glob("*.footpace")))[:3]
    whole = footpace("check", *samples, expect=(0, 1)).stdout.splitlines()
    given = "\n".join(samples)
    for runner, ordered in ((("parallel", "--will-cite", "-k", "-j2"), True), (("xargs", "-n1", "-P2"), False)):
        if shutil.which(runner[0]) is None:
            print(f"# {runner[0]} is not installed")
            continue
        done = subprocess.run([*runner, FOOTPACE, "check", "--rows"], input=given, capture_output=True, text=True,
                              env=NO_DISPLAY, timeout=300)
        rows = done.stdout.splitlines()
        assert rows == whole if ordered else sorted(rows) == sorted(whole), (runner, done.stdout, done.stderr)


@test
def a_rulebook_of_the_diocese_is_held_and_one_that_is_bad_is_told_where():
    with tempfile.TemporaryDirectory() as folder:
        book = pathlib.Path(folder) / "diocese.xml"
        rule = ('<rulebook xmlns="urn:footpace:rulebook:1" id="diocese" title="Of the diocese" edition="2026">\n'
                '<rule id="long" measure="mensa-length" test="at-least" low="20" unit="m" weight="required">'
                '<title>The altar is short</title><source>Of the diocese</source></rule>\n</rulebook>\n')
        book.write_text(rule)
        done = footpace("check", CHAPEL, "--rulebook", book, expect=1).stdout
        assert "The altar is short" in done and "[diocese: long]" in done
        rows = list(csv.DictReader(io.StringIO(footpace("check", SAMPLES, "--rulebook", book, "--as", "csv", expect=1).stdout)))
        assert all(int(row["required"]) >= 1 for row in rows)
        book.write_text(rule.replace("mensa-length", "mensa-breadth"))
        assert "diocese.xml:2: there is no measure “mensa-breadth”" in footpace("check", CHAPEL, "--rulebook", book, expect=2).stderr
        book.write_text(rule.replace('id="diocese"', 'id="rail"'))
        assert "there is a book “rail” already" in footpace("check", CHAPEL, "--rulebook", book, expect=2).stderr


def keeping(folder, name, norms):
    """The chapel with these norms, as a project of its own."""
    text = CHAPEL.read_text()
    assert "<norms" not in text
    path = pathlib.Path(folder) / name
    before, after = text.rsplit("</alternative>", 1)
    path.write_text(f'{before}</alternative>\n<norms jurisdiction="unsaid">{norms}</norms>{after}')
    return path


@test
def a_rulebook_that_is_given_holds_in_place_of_the_edition_that_a_project_keeps():
    def book(edition, low):
        return ('<rulebook xmlns="urn:footpace:rulebook:1" id="diocese" title="Of the diocese" edition="%s">\n'
                '<rule id="long" measure="mensa-length" test="at-least" low="%s" unit="m" weight="required">'
                '<title>The altar is short</title><source>Of the diocese</source></rule>\n</rulebook>\n' % (edition, low))

    with tempfile.TemporaryDirectory() as folder:
        kept = "".join(f"<line>{xml.sax.saxutils.escape(line)}</line>" for line in book("2019", "0.5").splitlines())
        project = keeping(folder, "a.footpace", f'<own name="old.xml">{kept}</own>')
        new, same = pathlib.Path(folder) / "new.xml", pathlib.Path(folder) / "same.xml"
        new.write_text(book("2026", "20"))
        same.write_bytes(book("2019", "0.5").replace("\n", "\r\n").encode())
        said = "“Of the diocese”, edition 2026, is held in place of edition 2019 that the project keeps."
        one = " ".join(footpace("check", project, "--rulebook", new, expect=1).stdout.split())
        assert "[diocese: long]" in one and said in one
        assert said in json.loads(footpace("check", project, "--rulebook", new, "--as", "json", expect=1).stdout)["amiss"]
        assert said in footpace("check", folder, "--rulebook", new, expect=1).stdout
        for row in csv.DictReader(io.StringIO(footpace("check", folder, "--rulebook", new, "--as", "csv", expect=1).stdout)):
            assert "diocese:long" in row["short"] and row["norms"] == said
        for given in ((), ("--rulebook", same)):
            plain = footpace("check", project, *given, expect=(0, 1)).stdout
            assert "[diocese: long]" not in plain and "in place of" not in plain
        assert "already" in footpace("check", project, "--rulebook", new, "--rulebook", new, expect=2).stderr


@test
def rows_tell_what_the_parish_sets_aside_and_does_not_follow():
    norms = ('<without book="flame"/><without book="rail"/>'
             '<limit book="step-and-fall" rule="riser-code" high="5" reason="Our elders ask for it."/>'
             '<aside book="step-and-fall" rule="tread-code" reason="Kept as it is."/>')
    with tempfile.TemporaryDirectory() as folder:
        keeping(folder, "a.footpace", norms)
        text = footpace("check", folder, expect=(0, 1)).stdout
        assert "; set aside: 1; held otherwise than printed: 1; not followed: flame rail\n" in text
        for row in csv.DictReader(io.StringIO(footpace("check", folder, "--as", "csv", expect=(0, 1)).stdout)):
            assert (row["set aside"], row["otherwise"], row["not followed"], row["norms"]) == ("1", "1", "flame rail", "")


@test
def findings_as_a_table_are_those_of_the_report():
    rows = list(csv.DictReader(io.StringIO(footpace("check", CHAPEL, "--as", "csv", expect=(0, 1)).stdout)))
    report = json.loads(footpace("check", CHAPEL, "--as", "json", expect=(0, 1)).stdout)["findings"]
    assert len(rows) == len(report) >= 120
    for row, finding in zip(rows, report):
        assert (row["book"], row["rule"], row["found"]) == (finding["book"], finding["rule"], finding["found"])
        assert row["value"] == "" if finding["measured"]["value"] is None else math.isclose(
            float(row["value"]), finding["measured"]["value"], abs_tol=1e-6)


@test
def room_is_counted_and_communion_timed():
    text = footpace("capacity", CHAPEL, "--alternative", "a", "--people", 60, "--each", 4, "--step", 1, expect=0).stdout
    assert re.search(r"^  Seats in all +\d+", text, re.M) and re.search(r"^  Places at the rail in all +\d+", text, re.M), text
    assert re.search(r"^  In 1 line, a minister at each +4 min 59 s +60 people", text, re.M), text  # 60 times 4 s, and 59 steps
    assert re.search(r"^  At the rail, \d+ places, 1 minister +at least 4 min", text, re.M), text
    assert all(len(line) <= 100 for line in text.splitlines()), text
    assert "none is assumed" in footpace("capacity", CHAPEL, expect=0).stdout
    curved = footpace("capacity", SAMPLES / "fan.footpace", "--as", "csv", expect=0).stdout  # of which the rule does not speak
    seats = [row for row in csv.DictReader(curved.splitlines()) if row["section"] == "places"]
    assert seats and all(row["found"] and not row["asked"] for row in seats), seats
    for option, value in (("--each", "0"), ("--each", "soon"), ("--people", "1.5"), ("--ministers", "-1"), ("--back", "1e9")):
        assert option in footpace("capacity", CHAPEL, "--each", 4, option, value, expect=2).stderr
    assert "yes or no" in footpace("capacity", CHAPEL, "--sprinklers", "wet", expect=2).stderr
    assert "text, csv or json" in footpace("capacity", CHAPEL, "--as", "prose", expect=2).stderr


@test
def times_that_the_project_keeps_hold_until_an_option_says_otherwise():
    with tempfile.TemporaryDirectory() as folder:
        kept = pathlib.Path(folder) / "kept.footpace"
        said = '  <capacity people="60" lines="2" each="4" step="1"/>\n'
        text = re.sub(r"  <capacity .*?/>\n", "", CHAPEL.read_text())
        kept.write_text(re.sub(r"(  <page |</project>)", lambda end: said + end[1], text, count=1))
        data = json.loads(footpace("capacity", kept, "--as", "json", expect=0).stdout)
        assert data["format"] == "footpace.capacity" and data["version"] == 1
        by_id = {section["id"]: section for section in data["sections"]}
        assert list(by_id) == ["places", "wheelchairs", "communion", "ways-out"], by_id
        assert all("ode" in section["says"] or section["id"] == "communion" for section in data["sections"])
        # 30 in each of two lines: 30 times 4 s, and 29 steps of 1 s.
        times = {row["what"]: row["found"] for row in by_id["communion"]["rows"]}
        assert times["In 2 lines, a minister at each"] == 149, times
        data = json.loads(footpace("capacity", kept, "--lines", 1, "--step", 2, "--as", "json", expect=0).stdout)
        times = {row["what"]: row["found"] for section in data["sections"] for row in section["rows"]}
        assert times["In 1 line, a minister at each"] == 60 * 4 + 59 * 2, times
        # As a table the same numbers.
        rows = list(csv.DictReader(footpace("capacity", kept, "--as", "csv", expect=0).stdout.splitlines()))
        assert {row["what"]: row["found"] for row in rows}["In 2 lines, a minister at each"] == "149"
        sheet = pathlib.Path(folder) / "capacity.svg"
        footpace("draw", kept, "--sheet", "capacity", "--out", sheet, expect=0)
        assert "Ways out" in sheet.read_text() and "2 lines" in sheet.read_text()


def hold_to_the_schema(report):
    try:
        import jsonschema
    except ImportError:
        print("# python3-jsonschema is not installed")
        return
    schema = json.loads((SAMPLES.parent / "src/review/findings.schema.json").read_text())
    jsonschema.Draft7Validator.check_schema(schema)
    jsonschema.validate(report, schema)


@test
def findings_as_json_are_as_the_schema_has_them():
    for sample in sorted(SAMPLES.glob("*.footpace")):
        hold_to_the_schema(json.loads(footpace("check", sample, "--as", "json", expect=(0, 1)).stdout))
    hold_to_the_schema(json.loads(footpace("check", CHAPEL, "--for", "low", "--as", "json", expect=(0, 1)).stdout))


@test
def measures_are_listed_for_whoever_writes_a_book():
    text = footpace("measures", expect=0).stdout
    for measure in ("mensa-length", "riser", "look-up", "altar-pressure"):
        assert re.search(rf"^{measure}\n  \S", text, re.M), measure
    assert text.count("\n  Drawn where it is shown: ") == text.count("\n  Nothing is measured where ") > 150
    assert "Drawn where it is shown: the riser, and the tread." in text
    assert "reads no file" in footpace("measures", CHAPEL, expect=2).stderr
    schema = ET.fromstring(footpace("measures", "--schema", expect=0).stdout)
    assert schema.tag.endswith("}grammar")


@test
def the_first_command_of_the_readme_works_without_a_display():
    with tempfile.TemporaryDirectory() as folder:
        env = dict(NO_DISPLAY, FOOTPACE_BUILD=BUILD, TMPDIR=folder)
        done = subprocess.run([SAMPLES / "run"], capture_output=True, text=True, env=env, timeout=600)
        assert done.returncode == 0, done.stderr[-400:]
        written = {path.name for path in pathlib.Path(folder).glob("footpace-*/*")}
        # Findings that find no room beside the drawing go on: as pages of the PDF, as further files of the SVG.
        assert {"elevation.pdf", "elevation.svg"} <= written, written
        assert all(re.fullmatch(r"elevation(\.pdf|(-\d+)?\.svg)", name) for name in written), written
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
