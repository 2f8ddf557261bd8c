# SPDX-License-Identifier: GPL-3.0-or-later
"""desktop: a screen of its own for a test, and the program on it, driven by keys alone.

A Desktop is a virtual screen with a window manager and a private message bus; everything that the
program could write goes to a temporary folder.  A Program is one start of the program on it, read
through its accessibility tree.  Waiting is always for something, with a deadline.
"""

import os
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time

from atspi import Bus
from jitter import Jitter

# Deadlines only decide how long a failure takes to be seen; TM_SLOW stretches them for a build
# with sanitizers.
SLOW = float(os.environ.get("TM_SLOW", "1"))
DEADLINE = 60.0 * SLOW
# From one look to the next: short at first, since most answers come at once.
FIRST_POLL, LAST_POLL = 0.01, 0.1

# What GLib and its kin say on standard error when something is wrong.
WARNING = re.compile(r"-(WARNING|CRITICAL|ERROR) \*\*")
# On a busy computer GTK 4.8 sometimes draws a frame before it has laid out what has just come into sight; the
# next one has it.
DRAWN_EARLY = re.compile(r"Gtk-WARNING .* Trying to snapshot \w+ 0x[0-9a-f]+ without a current allocation$")


class Failed(Exception):
    """Something that was waited for did not come, or was not as it should be."""


def wait_until(what, check, seconds=None):
    """Returns the first true answer of check(); fails with the words of `what` at the deadline."""
    end = time.monotonic() + (DEADLINE if seconds is None else seconds * SLOW)
    poll = FIRST_POLL
    while True:
        answer = check()
        if answer:
            return answer
        if time.monotonic() > end:
            raise Failed("waited in vain for " + what)
        time.sleep(poll)
        poll = min(2 * poll, LAST_POLL)


def expect(condition, what):
    if not condition:
        raise Failed(what)


class Desktop:
    """The screen, its window manager and its bus; use it in a `with` statement."""

    def __init__(self, width=1280, height=720):
        self.size = (width, height)
        self.folder = tempfile.mkdtemp(prefix="tenthmark-desktop-")
        self.started = []
        self.jitter = None

    def __enter__(self):
        # A test that takes too long is told to end: what it started ends with it.
        signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
        try:
            self._start()
        except BaseException:
            self.__exit__(*sys.exc_info())
            raise
        return self

    def __exit__(self, *_):
        if self.jitter is not None:
            self.jitter.end()
        for process in reversed(self.started):
            process.terminate()
        for process in reversed(self.started):
            try:
                process.wait(5)
            except subprocess.TimeoutExpired:
                process.kill()
                process.wait()
        shutil.rmtree(self.folder, ignore_errors=True)

    def path(self, *names):
        return os.path.join(self.folder, *names)

    def _spawn(self, command, **options):
        options.setdefault("stdout", subprocess.DEVNULL)
        options.setdefault("stderr", subprocess.DEVNULL)
        process = subprocess.Popen(command, env=self.env, **options)
        self.started.append(process)
        return process

    def _read_line(self, command):
        """Starts a server and returns the line in which it says where it listens."""
        reader, writer = os.pipe()
        command = [word.replace("FD", str(writer)) for word in command]
        self._spawn(command, pass_fds=[writer])
        os.close(writer)
        with os.fdopen(reader) as pipe:
            line = pipe.readline().strip()
        expect(line, command[0] + " did not start")
        return line

    def _start(self):
        self.env = self._environment()
        screen = "%dx%dx24" % self.size
        # Without -noreset the server starts anew, and drops whoever is connecting, each time its last
        # client goes: the look for the window manager below could so end the window manager.
        number = self._read_line(
            ["Xvfb", "-displayfd", "FD", "-screen", "0", screen, "-nolisten", "tcp", "-noreset"])
        self.env["DISPLAY"] = ":" + number
        self.env["DBUS_SESSION_BUS_ADDRESS"] = self._read_line(
            ["dbus-daemon", "--session", "--nofork", "--nopidfile", "--print-address=FD"])
        self.window_manager = self._spawn(["openbox"])
        wait_until("the window manager", self._has_window_manager)
        self.bus = Bus(self.env["DBUS_SESSION_BUS_ADDRESS"])
        if "TM_JITTER" in os.environ:
            self.jitter = Jitter(self.started, os.environ["TM_JITTER"])
            self.jitter.start()

    def _environment(self):
        """What the program sees: nothing of the person who runs the test."""
        env = {name: value for name, value in os.environ.items()
               if name.startswith(("ASAN_", "LSAN_", "UBSAN_", "TM_", "G_", "MALLOC_"))}
        for name in ["home", "data", "config", "cache", "state", "run"]:
            os.mkdir(self.path(name), 0o700)
        env.update({
            "PATH": os.environ.get("PATH", "/usr/local/bin:/usr/bin:/bin"),
            "HOME": self.path("home"),
            "TMPDIR": self.folder,
            "XDG_DATA_HOME": self.path("data"),
            "XDG_CONFIG_HOME": self.path("config"),
            "XDG_CACHE_HOME": self.path("cache"),
            "XDG_STATE_HOME": self.path("state"),
            "XDG_RUNTIME_DIR": self.path("run"),
            "GDK_BACKEND": "x11",
            "GDK_DEBUG": "gl-disable",
            "GSK_RENDERER": "cairo",
            "GTK_IM_MODULE": "gtk-im-context-simple",
            "GSETTINGS_BACKEND": "memory",
            "GIO_USE_VFS": "local",
            "GTK_USE_PORTAL": "0",
        })
        # A warning fails the case that it came in, see Program.warnings(), rather than end the program there.
        env["G_DEBUG"] = env.get("G_DEBUG", "").replace("fatal-warnings", "fatal-criticals")
        # Leaks are looked for where a test drives our own widgets: a whole session also has those of
        # GLib's start and of what the file chooser loads, which carry no name to leave them out by.
        env["ASAN_OPTIONS"] = env.get("ASAN_OPTIONS", "") + ":detect_leaks=0"
        return env

    def _has_window_manager(self):
        if self.window_manager.poll() is not None:
            self.window_manager = self._spawn(["openbox"])
        found = subprocess.run(["xdotool", "get_num_desktops"], env=self.env, capture_output=True)
        return found.returncode == 0

    def xdotool(self, *words):
        subprocess.run(["xdotool", *words], env=self.env, check=True, stdout=subprocess.DEVNULL)

    def keyboard_window(self):
        """The title of the window to which the screen sends keys, or None."""
        found = subprocess.run(["xdotool", "getwindowfocus", "getwindowname"], env=self.env,
                               capture_output=True, text=True)
        return found.stdout.strip() if found.returncode == 0 else None

    def picture(self, name):
        """Keeps a picture of the screen where TM_PICTURES says, for people to look at."""
        folder = os.environ.get("TM_PICTURES")
        if folder and shutil.which("import"):
            os.makedirs(folder, exist_ok=True)
            subprocess.run(["import", "-window", "root", os.path.join(folder, name + ".png")],
                           env=self.env, check=True)


class Program:
    """One start of the program; `find` and the like read it, `key` and `type` drive it."""

    def __init__(self, desktop, program, *arguments, env=None):
        self.desktop = desktop
        self.errors = open(desktop.path("errors-%d" % len(desktop.started)), "w+")
        command = [os.path.abspath(program), *arguments]
        self.process = subprocess.Popen(command, env={**desktop.env, **(env or {})}, cwd=desktop.folder,
                                        stdout=subprocess.DEVNULL, stderr=self.errors)
        desktop.started.append(self.process)
        self.root = wait_until("the program on the accessibility bus", self._find_root)
        self.window()

    def _find_root(self):
        expect(self.process.poll() is None, "the program ended: " + self.said())
        return self.desktop.bus.find_application(self.process.pid)

    def said(self):
        """What the program wrote to its standard error."""
        self.errors.seek(0)
        return self.errors.read().strip()

    def warnings(self):
        """The warnings among what it said, but for those of a frame that was drawn early."""
        return [line for line in self.said().splitlines()
                if WARNING.search(line) and not DRAWN_EARLY.search(line)]

    # Reading

    def window(self, name=None):
        """The window that has the keyboard, once there is one (whose title begins with `name`)."""
        def check():
            expect(self.process.poll() is None, "the program ended: " + self.said())
            top = self._find_active(self.root.windows())
            return top if top is not None and (name is None or top.name.startswith(name)) else None
        return wait_until("the window %s to be active" % (name or ""), check)

    def _find_active(self, windows):
        """The one that says that it is active.  GTK 4.8 does not say it of a dialog with a file chooser or
        with entries of its own, so the newest is taken where the screen gives it the keyboard.  While
        neither has it, between two windows, there is none: a key pressed then would go nowhere."""
        top = next((one for one in windows if one.active), None)
        if top is None and windows and windows[-1].name == self.desktop.keyboard_window():
            top = windows[-1]
        return top

    def look(self):
        """The window that has the keyboard, with everything in it."""
        return self.window().look()

    def find_all(self, role=None, name=None, within=None):
        return [one for one in (within or self.look()).walk() if one.matches(role, name)]

    def find(self, role=None, name=None, within=None):
        """The one shown thing of this role whose name is (or, as a pattern, matches) `name`."""
        def check():
            found = self.find_all(role, name, within)
            return found[0] if found else None
        return wait_until("%s named %s" % (role or "anything", name), check)

    def gone(self, role=None, name=None):
        wait_until("%s named %s to go" % (role or "anything", name),
                   lambda: not self.find_all(role, name))

    def shows(self, text):
        """Waits for a name or label that holds `text`, and returns the whole of it."""
        def check():
            return next((one.name for one in self.look().walk() if text in one.name), None)
        return wait_until("the words “%s”" % text, check)

    def told(self, text):
        """Waits for a message of the window that holds `text`, and returns the whole of it.  A toast goes within
        seconds, which may be less than a look takes; its words stay as the description of where it was."""
        def check():
            return next((one.description for one in self.look().walk() if text in one.description), None)
        return wait_until("the message “%s”" % text, check)

    def focused(self):
        """What has the keyboard, or None."""
        return self.window().find_focused()

    def dump(self):
        """The whole tree, as text, for a person who looks into a failure."""
        lines = []
        for window in self.root.windows():
            for one, depth in window.look().walk_with_depth():
                lines.append("  " * depth + one.describe())
        return "\n".join(lines)

    def picture(self, name):
        self.desktop.picture(name)

    # Driving

    def key(self, *keys):
        """Presses the keys once a window has the keyboard: between two windows they would go nowhere."""
        self.window()
        self.desktop.xdotool("key", "--delay", "4", *keys)

    def type(self, text):
        """Types into whatever has the keyboard.  A sign that the keyboard lacks is typed by its
        code point (Ctrl+Shift+U), as a person can."""
        plain = ""
        for letter in text:
            if ord(letter) < 128:
                plain += letter
                continue
            self._type_plain(plain)
            plain = ""
            self.key("ctrl+shift+u", *("%x" % ord(letter)), "space")
        self._type_plain(plain)

    def _type_plain(self, text):
        if text:
            self.window()
            self.desktop.xdotool("type", "--delay", "4", "--", text)

    def put(self, text):
        """Types `text` in place of what the focused entry holds and waits until it is there."""
        self.key("ctrl+a", "Delete")
        self.wait_text("")
        self.type(text)
        self.wait_text(text)

    def wait_text(self, text):
        def check():
            one = self.focused()
            return one is not None and one.text == text
        wait_until("the focused entry to hold “%s”" % text, check)

    def tab_to(self, role=None, name=None, back=False, steps=60):
        """Walks with Tab until the thing of this role and name has the keyboard."""
        def moved():
            one = self.focused()
            return one if one not in (None, before) else None
        before = self.focused()
        for _ in range(steps):
            if before is not None and before.matches(role, name):
                return before
            self.key("shift+Tab" if back else "Tab")
            try:
                before = wait_until("the focus to move", moved, 2)
            except Failed:
                before = self.focused()
        raise Failed("Tab does not reach %s named %s" % (role or "anything", name))

    def wait_focus(self, role=None, name=None):
        def check():
            one = self.focused()
            return one if one is not None and one.matches(role, name) else None
        return wait_until("the focus on %s named %s" % (role or "anything", name), check)

    def quit(self):
        """Ctrl+Q, and a clean end: nothing on standard error that says otherwise."""
        self.key("ctrl+q")
        try:
            status = self.process.wait(DEADLINE)
        except subprocess.TimeoutExpired:
            raise Failed("Ctrl+Q did not end the program") from None
        expect(status == 0, "the program ended with %d: %s" % (status, self.said()))


class Cases:
    """Prints the Test Anything Protocol; a failed case shows the accessibility tree."""

    def __init__(self):
        self.count = 0
        self.failures = 0
        self.program = None

    def start(self, desktop, *command):
        """Starts the program that the next cases are about."""
        self.program = None
        self.program = Program(desktop, *command)
        return self.program

    def run(self, title, function, *arguments):
        """Runs one case.  Returns whether it held."""
        self.count += 1
        try:
            function(*arguments)
            warnings = self.program.warnings() if self.program is not None else []
            expect(not warnings, "the program warned: " + "; ".join(warnings))
        except Exception as error:  # whatever went wrong belongs to this case
            self.failures += 1
            print("not ok %d - %s" % (self.count, title))
            self._explain(error)
            return False
        print("ok %d - %s" % (self.count, title), flush=True)
        return True

    def skip(self, title, why):
        self.count += 1
        print("ok %d - %s # SKIP %s" % (self.count, title, why), flush=True)

    def _explain(self, error):
        kind = "" if isinstance(error, Failed) else type(error).__name__ + ": "
        text = kind + str(error)
        try:
            if self.program is not None:
                self.program.desktop.picture("failed-%d" % self.count)
                text += "\n" + self.program.said() + "\n" + self.program.dump()
        except Exception as second:  # the program may be gone
            text += "\n(no tree: %s)" % second
        for line in text.splitlines():
            print("# " + line)
        sys.stdout.flush()
        # Whoever runs all the tests is shown this stream alone.
        print("case %d: %s" % (self.count, text.splitlines()[0]), file=sys.stderr, flush=True)

    def finish(self):
        print("1..%d" % self.count)
        return 1 if self.failures else 0
