# SPDX-License-Identifier: GPL-3.0-or-later
"""atspi: the accessibility tree of a program, read from the accessibility bus.

Each look reads a whole window afresh, one level of the tree at a time with all its questions asked
at once: one by one, a look would take longer than what it looks for stays on the screen.
"""

import re

import gi

gi.require_version("Gio", "2.0")
from gi.repository import Gio, GLib  # noqa: E402

ACCESSIBLE = "org.a11y.atspi.Accessible"
COMPONENT = "org.a11y.atspi.Component"
TEXT = "org.a11y.atspi.Text"
PROPERTIES = "org.freedesktop.DBus.Properties"
ROOT = "/org/a11y/atspi/accessible/root"
REGISTRY = "org.a11y.atspi.Registry"

# Numbers of the AT-SPI states that are asked for.
ACTIVE, CHECKED, FOCUSABLE, FOCUSED, PRESSED, SELECTED, SENSITIVE = 1, 4, 11, 12, 20, 23, 24


class Bus:
    """The accessibility bus that belongs to a session bus."""

    def __init__(self, session_address):
        session = self._connect(session_address)
        answer = session.call_sync("org.a11y.Bus", "/org/a11y/bus", "org.a11y.Bus", "GetAddress", None,
                                   GLib.VariantType("(s)"), Gio.DBusCallFlags.NONE, 20000, None)
        self.connection = self._connect(answer.unpack()[0])

    @staticmethod
    def _connect(address):
        flags = Gio.DBusConnectionFlags
        return Gio.DBusConnection.new_for_address_sync(
            address, flags.AUTHENTICATION_CLIENT | flags.MESSAGE_BUS_CONNECTION, None, None)

    def ask(self, questions):
        """Asks [(bus name, path, interface, method, arguments)] all at once.  Returns the answers in
        the same order, None for a question that was refused."""
        answers = [None] * len(questions)
        open_questions = set(range(len(questions)))

        def take(connection, result, at):
            try:
                answers[at] = connection.call_finish(result).unpack()
            except GLib.Error:
                pass
            open_questions.discard(at)

        for at, (name, path, interface, method, arguments) in enumerate(questions):
            self.connection.call(name, path, interface, method, arguments, None,
                                 Gio.DBusCallFlags.NONE, 10000, None, take, at)
        while open_questions:
            GLib.MainContext.default().iteration(True)
        return answers

    def find_application(self, pid):
        """Where the root of this process's tree is, or None while it is not on the bus."""
        roots = self.ask([(REGISTRY, ROOT, ACCESSIBLE, "GetChildren", None)])[0]
        for name, path in roots[0] if roots else []:
            owner = self.ask([("org.freedesktop.DBus", "/org/freedesktop/DBus", "org.freedesktop.DBus",
                               "GetConnectionUnixProcessID", GLib.Variant("(s)", (name,)))])[0]
            if owner and owner[0] == pid:
                return Application(self, name, path)
        return None


class Node:
    """One accessible as it was when it was looked at."""

    def __init__(self, bus, name, path):
        self.bus = bus
        self.place = (name, path)
        self.children = []

    def __eq__(self, other):
        return isinstance(other, Node) and self.place == other.place

    def __hash__(self):
        return hash(self.place)

    def questions(self):
        return [
            (*self.place, PROPERTIES, "GetAll", GLib.Variant("(s)", (ACCESSIBLE,))),
            (*self.place, ACCESSIBLE, "GetRoleName", None),
            (*self.place, ACCESSIBLE, "GetState", None),
            (*self.place, ACCESSIBLE, "GetChildren", None),
            (*self.place, COMPONENT, "GetExtents", GLib.Variant("(u)", (1,))),
        ]

    def take(self, properties, role, state, children, extents):
        properties = properties[0] if properties else {}
        low, high = state[0] if state else (0, 0)
        self.states = low | high << 32
        self.name = properties.get("Name", "")
        self.description = properties.get("Description", "")
        self.role = role[0] if role else ""
        self.extents = extents[0] if extents else None
        self.children = [Node(self.bus, *place) for place in children[0]] if children else []

    def _has(self, state):
        return bool(self.states >> state & 1)

    active = property(lambda self: self._has(ACTIVE))
    focusable = property(lambda self: self._has(FOCUSABLE))
    focused = property(lambda self: self._has(FOCUSED))
    selected = property(lambda self: self._has(SELECTED))
    sensitive = property(lambda self: self._has(SENSITIVE))
    checked = property(lambda self: self._has(CHECKED) or self._has(PRESSED))

    @property
    def shown(self):
        """Whether it takes any room: GTK 4.8 says of windows alone whether they show."""
        return self.extents is None or (self.extents[2] > 0 and self.extents[3] > 0)

    @property
    def text(self):
        """What an entry holds; of the entry inside a row that is its description."""
        count = self.bus.ask([(*self.place, PROPERTIES, "Get",
                               GLib.Variant("(ss)", (TEXT, "CharacterCount")))])[0]
        if count is None:
            return self.description
        answer = self.bus.ask([(*self.place, TEXT, "GetText", GLib.Variant("(ii)", (0, count[0])))])[0]
        return answer[0] if answer else ""

    def look(self):
        """Reads this and everything shown below it.  Returns itself."""
        level = [self]
        while level:
            questions = [question for node in level for question in node.questions()]
            answers = self.bus.ask(questions)
            for at, node in enumerate(level):
                node.take(*answers[5 * at:5 * at + 5])
                if node is not self and not node.shown:
                    node.children = []
            level = [child for node in level for child in node.children]
        return self

    def texts(self):
        """The `text` of this and of everything shown below it, asked for at once."""
        nodes = list(self.walk())
        counts = self.bus.ask([(*node.place, PROPERTIES, "Get", GLib.Variant("(ss)", (TEXT, "CharacterCount")))
                               for node in nodes])
        entries = [(node, count[0]) for node, count in zip(nodes, counts) if count is not None]
        held = self.bus.ask([(*node.place, TEXT, "GetText", GLib.Variant("(ii)", (0, count)))
                             for node, count in entries])
        return ([node.description for node, count in zip(nodes, counts) if count is None]
                + [answer[0] if answer else "" for answer in held])

    def find_focused(self):
        """What has the focus at or below this, in order, or None.  Asks of the others only what leads there."""
        level = [self]
        while level:
            answers = self.bus.ask([question for node in level for question in node.questions()[2:]])
            for at, node in enumerate(level):
                node.take(None, None, *answers[3 * at:3 * at + 3])
                if node is not self and not node.shown:
                    node.children = []
            level = [child for node in level for child in node.children]
        found = next((one for one in self.walk() if one.focused), None)
        if found is not None:
            children = found.children
            found.take(*self.bus.ask(found.questions()))
            found.children = children
        return found if found is not None and found.focused else None

    def walk_with_depth(self, depth=0):
        """This and everything shown below it, in order."""
        yield self, depth
        for child in self.children:
            if child.shown:
                yield from child.walk_with_depth(depth + 1)

    def walk(self):
        return (node for node, _ in self.walk_with_depth())

    def matches(self, role, name):
        if role is not None and self.role != role:
            return False
        if isinstance(name, re.Pattern):
            return name.search(self.name) is not None
        return name is None or self.name == name

    def describe(self):
        states = [word for word in ("focused", "active", "checked") if getattr(self, word)]
        text = self.text if self.role in ("text box", "search box") else ""
        return " ".join([self.role, "“%s”" % self.name, "“%s”" % text, *states, self.description])


class Application(Node):
    def windows(self):
        """The windows, each without what is in it."""
        places = self.bus.ask([(*self.place, ACCESSIBLE, "GetChildren", None)])[0]
        windows = [Node(self.bus, *place) for place in places[0]] if places else []
        answers = self.bus.ask([question for window in windows for question in window.questions()])
        for at, window in enumerate(windows):
            window.take(*answers[5 * at:5 * at + 5])
            window.children = []
        return windows
