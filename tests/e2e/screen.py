# SPDX-License-Identifier: GPL-3.0-or-later
"""A screen, a window manager and an accessibility bus of one's own; a hand (xdotool) and an ear (AT-SPI).

Ends every process that it started, by the process itself.
"""
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import time

NEEDED = ("Xvfb", "openbox", "xdotool", "dbus-run-session")


def require():
    """Skips the test where a tool is missing."""
    missing = [tool for tool in NEEDED if shutil.which(tool) is None]
    try:
        import gi
        gi.require_version("Atspi", "2.0")
        from gi.repository import Atspi  # noqa: F401
    except (ImportError, ValueError):
        missing.append("the Atspi typelib")
    if missing:
        print("1..0 # SKIP missing:", ", ".join(missing))
        sys.exit(0)


class Screen:
    """Processes around the program; the X server chooses a display that is free."""

    def __init__(self, width=1400, height=900):
        self.processes = []
        read, write = os.pipe()
        self._start(["Xvfb", "-displayfd", str(write), "-screen", "0", f"{width}x{height}x24", "-nolisten", "tcp",
                     "-r"],  # a key that is let go late on a busy machine is still one key
                    pass_fds=(write,))
        os.close(write)
        with os.fdopen(read) as pipe:
            os.environ["DISPLAY"] = ":" + pipe.readline().strip()
        self._start(["openbox"])
        time.sleep(0.5)

    def _start(self, command, **more):
        process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, **more)
        self.processes.append(process)
        return process

    def end(self):
        for process in reversed(self.processes):
            process.terminate()
            try:
                process.wait(10)
            except subprocess.TimeoutExpired:
                process.kill()
                process.wait()


class Failure(AssertionError):
    """What a person would see gone wrong."""


def check(truth, what):
    if not truth:
        raise Failure(what)


def wait_for(what, condition, seconds=30.0):
    """The first true answer of `condition`, asked again and again."""
    end = time.monotonic() + seconds
    while True:
        try:
            answer = condition()
        except Exception as error:  # a widget may vanish between two questions
            answer = None
            last = error
        else:
            last = None
        if answer:
            return answer
        if time.monotonic() > end:
            raise Failure(f"waited {seconds:.0f} s in vain for {what}" + (f" ({last})" if last else ""))
        time.sleep(0.05)


def hand(*words):
    subprocess.run(["xdotool", *map(str, words)], check=True)


def click(x, y):
    """As a hand comes to it: from beside, not out of nowhere."""
    for off in (6, 2, 0):
        hand("mousemove", round(x) - off, round(y) - off)
        time.sleep(0.05)
    time.sleep(0.1)
    hand("click", 1)


def drag(x0, y0, x1, y1, steps=15, held=None):
    """@held: a key that is held from after the press until the end."""
    hand("mousemove", round(x0), round(y0))
    time.sleep(0.1)
    hand("mousedown", 1)
    if held:
        hand("keydown", held)
    for i in range(1, steps + 1):
        hand("mousemove", round(x0 + (x1 - x0) * i / steps), round(y0 + (y1 - y0) * i / steps))
        time.sleep(0.03)
    time.sleep(0.3)
    hand("mouseup", 1)
    if held:
        hand("keyup", held)


def has_window(title):
    """Whether the window manager shows a window of that title."""
    found = subprocess.run(["xdotool", "search", "--onlyvisible", "--name", title], capture_output=True, text=True)
    return bool(found.stdout.strip())


def keys(*names):
    hand("key", *names)


def write(text):
    hand("type", "--delay", "15", text)


class Program:
    """The program as the accessibility bus tells of it."""

    def __init__(self, command, log):
        from gi.repository import Atspi, GLib
        self.atspi = Atspi
        self.error = GLib.Error
        self.known = {}
        Atspi.init()
        Atspi.set_timeout(20000, 30000)  # ms: a busy machine answers late
        self.log = open(log, "w+", encoding="utf-8")
        self.process = subprocess.Popen(command, stdout=self.log, stderr=self.log)
        self.application = wait_for("the program on the accessibility bus", self._find_application, 60)
        # Asked anew each time: nothing here listens for changes.
        self.application.set_cache_mask(Atspi.Cache.NONE)

    def _find_application(self):
        if self.process.poll() is not None:
            raise Failure(f"the program ended: {self.said()}")
        desktop = self.atspi.get_desktop(0)
        desktop.clear_cache()
        for i in range(desktop.get_child_count()):
            child = desktop.get_child_at_index(i)
            if child is not None and child.get_process_id() == self.process.pid and child.get_child_count() > 0:
                return child
        return None

    def said(self):
        self.log.flush()
        self.log.seek(0)
        return self.log.read()

    # --- the ear ---

    def walk(self, top=None):
        """All but what is hidden with all that it holds, such as a list that is not open: each question takes time."""
        top = top or self.application
        yield top
        n = top.get_child_count()
        if n > 0 and top != self.application and not top.get_state_set().contains(self.atspi.StateType.VISIBLE):
            return
        for i in range(n):
            child = top.get_child_at_index(i)
            if child is not None:
                yield from self.walk(child)

    def is_showing(self, widget):
        """The toolkit (4.8) does not tell the state of being on show: what has no size has never been."""
        if not widget.get_state_set().contains(self.atspi.StateType.VISIBLE):
            return False
        try:
            e = self.atspi.Component.get_extents(widget, self.atspi.CoordType.WINDOW)
        except self.error:  # it is gone, or has no place of its own
            return False
        return e is not None and e.width > 0 and e.height > 0

    def alert(self):
        """The message that is shown; it lies near the top of the tree, and goes away by itself."""
        level = [self.application]
        for _ in range(6):
            level = [w.get_child_at_index(i) for w in level for i in range(w.get_child_count())]
            for w in level:
                if w.get_role_name() in ("alert", "notification") and self.is_showing(w):
                    return w
        return None

    def answers(self, widget, name, role):
        """Whether a widget is of a role and has a name (a string, or a compiled pattern)."""
        if role is not None and widget.get_role_name() not in (role if isinstance(role, tuple) else (role,)):
            return False
        said = widget.get_name() or ""
        return name is None or bool(name.search(said) if isinstance(name, re.Pattern) else said == name)

    def find(self, name=None, role=None):
        """The first widget on show that answers to name and role; one that was found before is asked first, since
        to walk the whole tree takes long."""
        known = self.known.get((name, role))
        try:
            if known is not None and self.answers(known, name, role) and self.is_showing(known):
                return known
        except self.error:  # it is gone
            pass
        for widget in self.walk():
            if self.answers(widget, name, role) and self.is_showing(widget):
                self.known[name, role] = widget
                return widget
        return None

    def wait(self, name=None, role=None, seconds=30.0):
        return wait_for(f"{role or 'widget'} {name!r}", lambda: self.find(name, role), seconds)

    def text(self, widget):
        return self.atspi.Text.get_text(widget, 0, self.atspi.Text.get_character_count(widget))

    def focused(self):
        """What has the focus, in the window that is active; the innermost that says so."""
        found = None
        for i in range(self.application.get_child_count()):
            top = self.application.get_child_at_index(i)
            if top is not None and top.get_state_set().contains(self.atspi.StateType.ACTIVE):
                for widget in self.walk(top):
                    if widget.get_state_set().contains(self.atspi.StateType.FOCUSED):
                        found = widget
                        break
        if found is None:
            return None
        # A field holds the text in which one types: the innermost that has a name.
        inner = [w for w in self.walk(found) if w.get_name() and w.get_state_set().contains(self.atspi.StateType.FOCUSED)]
        return inner[-1] if inner else found

    def names(self, role):
        return [w.get_name() for w in self.walk() if w.get_role_name() == role and self.is_showing(w)]

    # --- where things are ---

    def frame_origin(self, widget):
        """Where the window that holds the widget lies on the screen."""
        top = widget
        while top.get_parent() is not None and top.get_parent().get_role_name() != "application":
            top = top.get_parent()
        title = top.get_name()
        # It fails when a window goes away while it searches.
        found = wait_for("a window on the screen", lambda: subprocess.run(
            ["xdotool", "search", "--onlyvisible", "--pid", str(self.process.pid)],
            capture_output=True, text=True, check=True).stdout.split())
        for window in found:
            name = subprocess.run(["xdotool", "getwindowname", window], capture_output=True, text=True).stdout.strip()
            if name == title or len(found) == 1:
                shell = subprocess.run(["xdotool", "getwindowgeometry", "--shell", window], capture_output=True,
                                       text=True, check=True).stdout
                place = dict(line.split("=") for line in shell.split())
                return int(place["X"]), int(place["Y"])
        raise Failure(f"no window on the screen is called {title!r}: {found}")

    def box(self, widget):
        """Left, top, width, height on the screen."""
        x, y = self.frame_origin(widget)
        e = self.atspi.Component.get_extents(widget, self.atspi.CoordType.WINDOW)
        return x + e.x, y + e.y, e.width, e.height

    def click(self, widget):
        x, y, w, h = self.box(widget)
        click(x + w / 2, y + h / 2)

    def close(self):
        if self.process.poll() is None:
            self.process.terminate()
            try:
                self.process.wait(15)
            except subprocess.TimeoutExpired:
                self.process.kill()
                self.process.wait()
        self.log.close()


# --- running a task ---

def do_all(task, deeds):
    """One after another, each a case of the test."""
    print(f"1..{len(deeds)}", flush=True)
    for deed in deeds:
        began = time.monotonic()
        task.doing = deed.__name__.replace("_", " ")
        deed()
        task.done += 1
        print(f"ok {task.done} {task.doing} # {time.monotonic() - began:.1f} s", flush=True)


def _environment(folder):
    os.environ.update({"GDK_BACKEND": "x11", "GSK_RENDERER": "cairo", "GDK_DEBUG": "gl-disable",
                       "GSETTINGS_BACKEND": "memory", "GIO_USE_VFS": "local", "LC_ALL": "C.UTF-8",
                       "XDG_DATA_HOME": folder + "/data", "XDG_CONFIG_HOME": folder + "/config",
                       "XDG_STATE_HOME": folder + "/state"})
    os.environ.pop("GTK_A11Y", None)


def _inside(make, arguments):
    with tempfile.TemporaryDirectory(prefix="footpace-e2e-") as folder:
        _environment(folder)
        task = make(*arguments, pathlib.Path(folder))
        try:
            task.run()
        except Exception as failure:  # also what the bus or a tool did not do
            # In the name of the case, which every reader of results shows.
            said = f"{getattr(task, 'doing', 'what comes next')}: {type(failure).__name__}, {failure}"
            print(f"not ok {task.done + 1} {said.replace('#', 'no.')}".replace("\n", "; "))
            print("# the program said:", task.program.said().replace("\n", "\n# "))
            if shutil.which("import") and os.environ.get("FOOTPACE_E2E_PICTURE"):
                subprocess.run(["import", "-window", "root", os.environ["FOOTPACE_E2E_PICTURE"]], check=False)
            return 1
        finally:
            task.program.close()
    return 0


def serve(script, make):
    """Runs a task (what `make` makes of the arguments and a folder) on a screen and a bus of its own; its exit status."""
    if sys.argv[1] == "--inside":
        # Other programs on the bus talk on the standard output too; the results go their own way.
        sys.stdout = os.fdopen(int(sys.argv[2]), "w")
        return _inside(make, sys.argv[3:])
    require()
    own = Screen()
    results = os.dup(1)
    try:
        bus = subprocess.Popen(["dbus-run-session", "--", sys.executable, script, "--inside", str(results),
                                *sys.argv[1:]], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                               pass_fds=(results,))
        return bus.wait()
    finally:
        own.end()
