# SPDX-License-Identifier: GPL-3.0-or-later
"""A whole parish is drawn from nothing, with the program alone: brief, survey, what stands there already, and every
alternative. What has to be typed is read from a file; at the end the file that was saved says the same as that one.

Fields are filled and buttons pressed through the accessibility interface, as by a screen reader; lists by keys.

usage: parish.py PROGRAM FILE
"""
import collections
import os
import re
import sys
import time
import xml.etree.ElementTree as ET

import screen
from screen import Failure, Program, check, has_window, keys, wait_for, write

NS = "{urn:footpace:project:1}"
RNG = "{http://relaxng.org/ns/structure/1.0}"
# What an alternative says beside its things: it is not drawn.
SAID = ("note", "kept", "setting")
NOT_MEASURES = ("id", "name", "on", "x", "y", "turn")
# Typed in per cent, and kept as shares.
SHARES = ("edge-contrast",)
PLACE = {"x": "Across (Epistle side +)", "y": "Along (east +)", "turn": "Turned (to the left +)"}
BRIEF = {"title": "Title", "place": "Town", "client": "Legal owner", "author": "Drawn by", "ministers": "Ministers",
         "seats": "Seats wanted", "north": "True north, degrees", "note": "Note"}
SITE = {"latitude": "Latitude, degrees", "longitude": "Longitude, degrees", "zone": "Time zone"}
BRIEF_CHOICES = {"books": ("Books followed", ("older", "newer", "both")),
                 "facing": ("Celebrant faces", ("east", "people")), "percentile": ("Stature", ("5", "50", "95"))}
CELEBRATIONS = ("low", "sung", "solemn", "pontifical", "requiem", "passiontide", "good-friday",
                "benediction", "weekday", "sunday", "bishop")


def tag(element):
    return element.tag.replace(NS, "")


def number(text):
    return float(re.sub("[\u202f\u00a0 ]", "", text.replace("−", "-")))


def label(kind):
    return kind.replace("-", " ")


def read_schema():
    """The kinds of the building, and the values of each choice, (kind, attribute) -> ids, in the order of the lists."""
    root = ET.parse(os.path.join(os.environ["FOOTPACE_SCHEMAS"], "store", "project.rng")).getroot()
    building = next(d for d in root.iter(RNG + "define") if d.get("name") == "building")
    return ({ref.get("name") for ref in building.iter(RNG + "ref")},
            {(e.get("name"), a.get("name")): [v.text for v in a.iter(RNG + "value")]
             for e in root.iter(RNG + "element") for a in e.iter(RNG + "attribute")
             if a.find(RNG + "choice") is not None})


class Task:
    def __init__(self, program, sample, folder):
        self.file = folder / "drawn.footpace"
        self.wanted = ET.parse(sample).getroot()
        self.brief = self.wanted.find(NS + "brief")
        self.survey = list(self.wanted.find(NS + "survey"))
        self.building, self.choices = read_schema()
        self.shown = {}  # (kind, attribute, id) -> what the list says
        # By kind, the names of what came of itself: here with the room.
        self.left = collections.defaultdict(list, wall=["Wall"], floor=["Nave floor", "Sanctuary floor"],
                                            steps=["Steps"], opening=["West door", "Sacristy door"])
        self.program = Program([program], folder / "said.txt")
        self.atspi = self.program.atspi
        self.fields = []
        self.called = {}  # by the ids of the file
        self.by_itself = set()  # (kind, name) of what is called as wanted without being named
        self.done = self.typed = 0

    # --- hands ---

    def do(self, widget, action=0):
        self.atspi.Action.do_action(widget, action)

    def act(self, name):
        """One of the actions of the window, which stand in its menus."""
        wait_for(f"the window to do {name!r}", lambda: self.act_now(name), 10)

    def act_now(self, name):
        """The bus numbers only what can be done just now, and findings that come make more of it possible: a number is used
        at once after it was told, or it may mean another action."""
        for i in range(self.atspi.Action.get_n_actions(self.frame)):
            if self.atspi.Action.get_action_name(self.frame, i) == name:
                self.do(self.frame, i)
                return True
        return False

    def fill(self, field, text):
        self.atspi.EditableText.set_text_contents(field, text)
        self.typed += 1

    def has(self, widget, state):
        return widget.get_state_set().contains(state)

    def has_focus(self, field):
        state = self.atspi.StateType.FOCUSED
        return self.has(field, state) or (field.get_role_name() == "combo box"
                                          and self.has(field.get_child_at_index(0), state))

    def focus(self, field):
        """A field of what is chosen, by as many times Tab as it takes."""
        if self.at is None or not self.has_focus(self.fields[self.at]):
            self.enter_row(self.names().index(self.text("Name")))
            self.at = wait_for("the first field", self.focused_field, 5) - 1
        to = self.fields.index(field)
        if to != self.at:
            keys(*["Tab" if to > self.at else "shift+Tab"] * abs(to - self.at))
        self.at = to
        try:
            wait_for("the focus", lambda: self.has_focus(field), 5)
        except Failure:
            raise Failure(f"the focus is on {self.program.focused().get_name()!r}, not {field.get_name()!r} "
                          f"of {self.text('Name')!r}") from None

    def focused_field(self):
        """Its number, from 1."""
        return next((i for i, field in enumerate(self.fields, 1) if self.has_focus(field)), None)

    def enter(self, field, text):
        """Whether it is taken: then it is shown as the program writes it, without the blank."""
        self.focus(field)
        self.fill(field, text + " ")
        keys("Return")
        wait_for(f"{text!r} to be taken or refused", lambda: self.is_wrong(field)
                 or self.program.text(field) != text + " ", 10)
        return not self.is_wrong(field)

    def is_wrong(self, field):
        """What is wrong stands below the field."""
        return field.get_parent().get_parent().get_child_count() > 1

    def enter_name(self, name):
        self.focus(self.place["Name"])
        self.fill(self.place["Name"], name)
        keys("Return")
        wait_for("the name to be taken", lambda: self.undo.get_description() == "Undo: Rename", 10)

    def says(self, combo):
        return [w.get_name() for w in self.program.walk(combo) if w.get_role_name() == "label"
                and w.get_name() != "(None)"][-1]

    def pick(self, combo, at=None, name=None):
        """The choice that is so far from the first, or that is so called; what is shown then."""
        if name is not None and name == self.says(combo):
            return name
        if combo in self.fields:
            self.focus(combo)
            keys("space")
        else:
            self.do(combo.get_child_at_index(0))
        popup = wait_for("the choices", lambda: combo.get_child_count() > 1 and combo.get_child_at_index(1), 10)
        choices = wait_for("what they say", lambda: [w.get_name() for w in self.program.walk(popup)
                                                     if w.get_role_name() == "label"], 10)
        check(name is None or name in choices, f"{name!r} is not among {choices}")
        time.sleep(0.15)
        keys("Home", *["Down"] * (at if name is None else choices.index(name)), "Return")
        wait_for("the list to close", lambda: combo.get_child_count() == 1 and (
            combo not in self.fields or self.has_focus(combo)), 10)
        self.typed += 1
        return self.says(combo)

    def windows(self):
        top = self.program.application
        return [top.get_child_at_index(i) for i in range(top.get_child_count())]

    def dialog(self, title):
        """Its widgets by name: fields and buttons."""
        wait_for(f"the dialog {title!r}", lambda: has_window(title), 20)
        top = wait_for("the dialog", lambda: next(
            w for w in self.windows() if re.search(title, w.get_name() or "")))
        return {w.get_name(): w for w in self.program.walk(top)
                if w.get_role_name() in ("text", "text box", "entry", "combo box", "check box", "push button")}

    def answer(self, widgets, button, title):
        self.do(widgets[button])
        wait_for(f"{title!r} to go", lambda: not has_window(title), 20)

    def tab_to(self, widget, most=40):
        for _ in range(most):
            if widget.get_state_set().contains(self.atspi.StateType.FOCUSED):
                return
            keys("Tab")
            time.sleep(0.05)
        raise Failure(f"{most} times Tab did not come to {widget.get_name()!r}")

    def tick(self, box, ticked):
        if box.get_state_set().contains(self.atspi.StateType.CHECKED) != ticked:
            self.tab_to(box)
            keys("space")
            wait_for("the tick", lambda: box.get_state_set().contains(self.atspi.StateType.CHECKED) == ticked, 5)

    # --- the list and what is chosen ---

    def rows(self):
        """What the rows of the list say, headings too."""
        return [self.list.get_child_at_index(i).get_name() for i in range(self.list.get_child_count())]

    def names(self):
        """Of all rows; "" where the row is a heading, or tells where something stood before."""
        return [(re.match("(.*?), (existing|proposed|moved|removed)", row) or ["", ""])[1] for row in self.rows()]

    def choose(self, name):
        at = wait_for(f"{name!r} in the list", lambda: 1 + self.names().index(name), 10) - 1
        self.open_row(at)
        wait_for(f"{name!r} to be chosen", lambda: self.fields_now() and self.text("Name") == name, 10)

    def open_row(self, at):
        self.atspi.Selection.clear_selection(self.list)
        self.atspi.Selection.select_child(self.list, at)
        self.enter_row(at)

    def enter_row(self, at):
        """From the list into the fields of what is chosen."""
        keys("ctrl+l")
        try:
            wait_for("the row to have the focus", lambda: self.row_has_focus(at), 10)
        except Failure:
            here = [row for i, row in enumerate(self.rows()) if self.row_has_focus(i)]
            raise Failure(f"the list has the focus on {here}, not on {self.rows()[at]!r}") from None
        keys("Return")

    def row_has_focus(self, at):
        return self.has(self.list.get_child_at_index(at), self.atspi.StateType.FOCUSED)

    def text(self, name):
        return self.program.text(self.place[name])

    def read_fields(self):
        wait_for("the fields of what is chosen", self.fields_now, 10)

    def fields_now(self):
        """What can be typed of what is chosen: the measures, and what stands under "Name and place" by its name."""
        panel = self.measures_panel
        self.measures = [panel.get_child_at_index(i).get_child_at_index(0).get_child_at_index(1)
                         for i in range(panel.get_child_count())]
        self.place = {}
        for i in range(self.place_panel.get_child_count()):
            line = self.place_panel.get_child_at_index(i)
            if line.get_role_name() != "panel":
                line = line.get_child_at_index(0)
            field = line.get_child_at_index(1)
            self.place[field.get_name()] = field
        self.fields, self.at = self.measures + list(self.place.values()), None
        return True

    def measures_of(self, thing):
        """They stand in the order in which the file has them."""
        names = [a for a in thing.keys() if a not in NOT_MEASURES]
        check(len(self.measures) == len(names),
              f"{thing.get('id')}: {len(self.measures)} measures, and {len(names)} in the file")
        return list(zip(names, self.measures))

    def add(self, kind):
        before = collections.Counter(self.names())
        self.act("win.add-list")
        wait_for("where to type", lambda: self.program.is_showing(self.find_field), 10)
        self.fill(self.find_field, label(kind))
        keys("Return")
        wait_for(f"a {kind} to be added", lambda: self.undo.get_description().startswith("Undo: Add ")
                 and collections.Counter(self.names()) != before, 10)
        self.read_fields()
        more = collections.Counter(self.names()) - before - collections.Counter([self.text("Name")])
        self.left[kind] += filter(None, more.elements())

    def claim(self, thing):
        """What came of itself is used before something is added; what is called as wanted first."""
        left = self.left[tag(thing)]
        wanted = {t.get("name") for t in self.survey}
        for name in left:
            if name == thing.get("name") or (thing.get("name") not in left and name not in wanted):
                left.remove(name)
                self.choose(name)
                return True
        return False

    # --- one thing ---

    def put_on(self, thing):
        if "Stands on" in self.place:
            on = thing.get("on")
            self.pick(self.place["Stands on"], name=self.called[on] if on else "the floor")
            self.read_fields()

    def try_measure(self, kind, name, field, value):
        ids = self.choices.get((kind, name))
        if name in SHARES:
            value = f"{float(value) * 100:g}"
        if ids is None:
            shown = self.program.text(field)
            return number(shown) == float(value) or self.enter(field, value)
        if self.shown.get((kind, name, value)) != self.says(field):
            self.shown[kind, name, value] = self.pick(field, at=ids.index(value))
        return not self.is_wrong(field)

    def try_place(self, thing):
        return [a for a in PLACE if PLACE[a] in self.place
                and number(self.text(PLACE[a])) != float(thing.get(a))
                and not self.enter(self.place[PLACE[a]], thing.get(a))]

    def measure(self, thing):
        """Again, while what is typed first is refused for what is typed next: a window is high before its sill is."""
        for _ in range(4):
            failed = self.try_place(thing)
            failed += [a for a, field in self.measures_of(thing)
                       if not self.try_measure(tag(thing), a, field, thing.get(a))]
            if not failed:
                return
        raise Failure(f"{thing.get('id')}: {failed} cannot be typed")

    def outline(self, thing):
        corners = list(thing)
        if not corners:
            return
        self.act("win.outline")
        widgets = self.dialog("^Outline of")
        self.corner_count(widgets, len(corners))
        widgets = self.dialog("^Outline of")
        for i, corner in enumerate(corners, 1):
            self.fill(widgets[f"Corner {i} across"], corner.get("x"))
            self.fill(widgets[f"Corner {i} along"], corner.get("y"))
        time.sleep(0.3)
        self.answer(widgets, "Apply", "^Outline of")

    def corner_count(self, widgets, n):
        have = sum(1 for name in widgets if re.fullmatch(r"Corner \d+ across", name))
        for _ in range(abs(n - have)):
            self.do(widgets["Add a corner after this one" if n > have else "Take this corner away"])

    def draw(self, thing, in_survey):
        if not (in_survey and self.claim(thing)):
            self.add(tag(thing))
        self.read_fields()
        self.put_on(thing)
        self.measure(thing)
        self.outline(thing)
        self.read_fields()
        if thing.get("name") == self.text("Name"):
            self.by_itself.add((tag(thing), thing.get("name")))
        elif thing.get("name"):
            self.enter_name(thing.get("name"))
        self.called[thing.get("id")] = self.text("Name")
        if in_survey and tag(thing) not in self.building:
            self.act("win.put-into-survey")
            wait_for("it to be existing", lambda: any(
                row.startswith(self.called[thing.get("id")] + ", existing") for row in self.rows()), 10)

    # --- the task ---

    def begins(self):
        walls = next(t for t in self.survey if tag(t) == "wall" and t.get("closed") == "yes")
        xs, ys = ([float(c.get(a)) for c in walls] for a in "xy")
        deep = max(ys)
        measures = {"Width of the nave": 2 * max(xs), "Length of the nave": -min(ys), "Depth of the sanctuary": deep,
                    "Width of the chancel": 2 * max(x for x, y in zip(xs, ys) if y == deep),
                    "Sanctuary above the nave": max(float(t.get("level")) for t in self.survey if tag(t) == "floor"),
                    "Height of the walls": walls.get("height"), "Thickness of the walls": walls.get("thickness")}
        self.program.wait("Open the Sample Parish", "push button")
        keys("ctrl+n")
        widgets = self.dialog("New Project")
        for name, value in measures.items():
            self.fill(widgets[name], str(value))
        self.fill(widgets["Title"], self.brief.findtext(NS + "title"))
        self.tick(widgets["An altar on its steps, and what belongs to it"], False)
        time.sleep(0.5)
        self.answer(widgets, "Make", "New Project")
        time.sleep(1.0)
        self.looks_round()

    def looks_round(self):
        """Finds once what stays where it is."""
        find = self.program.find
        self.frame = wait_for("the window", lambda: next(
            w for w in self.windows() if w.get_role_name() == "frame"))
        wait_for("the board", lambda: find("Board", "image"))
        self.undo = find("Undo", "push button")
        self.list = find("GtkColumnListView", "list")
        # What the inspector is made of is there once something is chosen.
        self.open_row(1)
        self.measures_panel = self.program.wait("Measures", "panel")
        self.place_panel = self.program.wait("Name and place", "panel")
        keys("ctrl+i")
        self.find_field = self.program.wait("Find a kind of thing to add")
        keys("Escape")
        time.sleep(0.3)

    def writes_the_brief(self):
        self.act("win.brief")
        widgets = self.dialog("^Brief$")
        for one, name in BRIEF.items():
            self.fill(widgets[name], self.brief.findtext(NS + one))
        for one, (name, ids) in BRIEF_CHOICES.items():
            value = ids.index(self.brief.findtext(NS + one))
            if one != "percentile" or value != 1:
                self.pick(widgets[name], at=value)
        self.says_where_and_when(widgets)
        self.ticks_celebrations(widgets)
        self.answer(widgets, "Apply", "^Brief$")

    def says_where_and_when(self, widgets):
        site, masses = self.brief.find(NS + "site"), self.brief.findall(NS + "mass")
        for one, name in SITE.items():
            self.fill(widgets[name], site.get(one))
        self.fill(widgets["Mass times"], ", ".join(f"{m.get('day')} {m.get('at')}" for m in masses))

    def ticks_celebrations(self, widgets):
        boxes = [w for w in widgets.values() if w.get_role_name() == "check box"]
        asked = self.brief.findtext(NS + "celebrations").split()
        check(len(boxes) == len(CELEBRATIONS), f"{len(boxes)} celebrations")
        for box, one in zip(boxes, CELEBRATIONS):
            self.tick(box, one in asked)

    def draws_the_survey(self):
        for thing in self.survey:
            self.draw(thing, True)
        check(not any(self.left.values()), f"left over: {dict(self.left)}")

    def names_alternative(self, alternative, action, button):
        title = "^Alternative$" if button == "Apply" else "^New Alternative$"
        self.act(action)
        widgets = self.dialog(title)
        self.fill(widgets["Name"], alternative.get("name"))
        self.fill(widgets["Note"], alternative.findtext(NS + "note") or "")
        self.answer(widgets, button, title)

    def draws_the_alternatives(self):
        first, *others = self.wanted.findall(NS + "alternative")
        self.names_alternative(first, "win.alternative-rename", "Apply")
        self.decides(first)
        for alternative in others:
            self.do(self.program.wait(first.get("name"), ("toggle button", "push button")))
            self.names_alternative(alternative, "win.alternative-new", "Make")
            self.decides(alternative)

    def decides(self, alternative):
        """What becomes of what is there, and what is new."""
        for thing in alternative:
            if tag(thing) == "removed":
                self.removes(self.called[thing.get("id")])
            elif tag(thing) == "moved":
                self.choose(self.called[thing.get("id")])
                self.put_on(thing)
                check(not self.try_place(thing), f"{thing.get('id')} cannot be moved")
            elif tag(thing) not in SAID:
                self.draw(thing, False)

    def removes(self, name):
        if not any(row.startswith(name + ", removed") for row in self.rows()):  # with what carried it
            self.choose(name)
            self.act("win.remove")

    def saves(self):
        keys("ctrl+s")
        wait_for("where to save it", lambda: has_window("Save"))
        time.sleep(1.0)
        keys("ctrl+a")
        write(str(self.file))
        keys("Return")
        wait_for("the file", self.file.exists)
        wait_for("the dialog to go", lambda: not has_window("Save"))
        keys("ctrl+w")
        check(wait_for("the program to end", lambda: self.program.process.poll() is not None, 60), "it did not end")
        said = [line for line in self.program.said().splitlines()
                if re.search(r"WARNING|CRITICAL|ERROR|runtime error", line)]
        check(not said, "the program complained: " + "\n".join(said))

    def left_behind(self):
        drawn, wanted = (contents(root, self.by_itself) for root in (ET.parse(self.file).getroot(), self.wanted))
        print(f"# {self.typed} fields", flush=True)
        for part in wanted:
            missing, more = wanted[part] - drawn.get(part, collections.Counter()), drawn.get(part, {}) - wanted[part]
            check(not missing and not more, f"{part}: wanted {sorted(missing)}; drawn {sorted(more)}")
        check(list(drawn) == list(wanted), f"drawn: {list(drawn)}; wanted: {list(wanted)}")

    def run(self):
        steps = [self.begins, self.writes_the_brief, self.draws_the_survey, self.draws_the_alternatives, self.saves,
                 self.left_behind]
        screen.do_all(self, steps)


# --- what a file says ---

def contents(root, by_itself):
    """By parts, in words that hold no ids: a thing that is referred to goes by kind, name and place."""
    for thing in root.iter():
        if (tag(thing), thing.get("name")) in by_itself:
            del thing.attrib["name"]
    survey = list(root.find(NS + "survey"))
    out = {"brief": collections.Counter((tag(e), e.text or "", tuple(sorted(e.items()))) for e in root.find(NS + "brief")),
           "survey": collections.Counter(words(t, survey) for t in survey)}
    for a in root.findall(NS + "alternative"):
        things = survey + [t for t in a if tag(t) not in ("moved", "removed", *SAID)]
        own = [f"facing {a.get('facing')}", f"note {a.findtext(NS + 'note')}"]
        out[f"alternative {a.get('name')}"] = collections.Counter(
            own + [words(t, things) for t in a if tag(t) not in SAID])
    return out


def words(thing, things):
    known = {t.get("id"): t for t in things}
    carries = any(t.get("on") == thing.get("id") for t in things)
    said = dict(thing.attrib)
    if tag(thing) in ("moved", "removed"):
        said["id"] = called(known[thing.get("id")])
    else:
        del said["id"]
    if "on" in said:
        said["on"] = called(known[said["on"]])
    if tag(thing) == "footpace" and carries:  # it lies round what stands on it, wherever it was before
        del said["x"], said["y"], said["turn"]
    return f"{tag(thing)} {sorted(said.items())} {[(c.get('x'), c.get('y')) for c in thing]}"


def called(thing):
    place = () if tag(thing) == "footpace" else (thing.get("x"), thing.get("y"))
    return f"{tag(thing)} {thing.get('name')} {place}"


if __name__ == "__main__":
    sys.exit(screen.serve(__file__, Task))
