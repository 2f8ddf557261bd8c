#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Drawings from other programs: a file and a picture pasted from the clipboard of another program, and
dragged from its window onto the drawing.

  bring-journey.py PROGRAM OFFER

TM_PICTURES=FOLDER keeps a picture of each step.
"""

import re
import subprocess
import sys
import time

from desktop import Cases, Desktop, Program, wait_until
from steps import begin_job, list_features, record

PART = "DR-8"
DRAWING = """<svg xmlns="http://www.w3.org/2000/svg" width="297mm" height="210mm" viewBox="0 0 297 210">
<rect x="60" y="50" width="120" height="80" fill="none" stroke="black"/>
<text x="200" y="190" font-size="5">Invented example</text></svg>
"""


def begin(program, desktop):
    for name in ["plate", "cover"]:
        with open(desktop.path(name + ".svg"), "w", encoding="utf-8") as drawing:
            drawing.write(DRAWING)
    with open(desktop.path("wrong.svg"), "w", encoding="utf-8") as drawing:
        drawing.write("this is no drawing")
    begin_job(program, PART)
    list_features(program, "4X Ø6.6 ±0.15")
    program.key("ctrl+2")
    program.wait_focus("button", "Add the drawing of this part…")


class Offer:
    """The other program, for as long as a `with` statement: in the lower left corner, over ours."""

    def __init__(self, desktop, binary, *what):
        self.desktop, self.command = desktop, [binary, *what]

    def __enter__(self):
        self.process = self.desktop._spawn(self.command)
        self.window = wait_until("the other program's window", self._find)
        self.desktop.xdotool("windowmove", self.window, "0", str(self.desktop.size[1] - 140))
        return self

    def __exit__(self, *_):
        self.process.terminate()
        self.process.wait(5)

    def _search(self, *words):
        found = subprocess.run(["xdotool", "search", "--onlyvisible", *words], env=self.desktop.env,
                               capture_output=True, text=True)
        return found.stdout.split()

    def _find(self):
        return next(iter(self._search("--name", "^Offer$")), None)

    def give_keyboard_back(self, program):
        ours = wait_until("our window", lambda: self._search("--pid", str(program.process.pid)))
        self.desktop.xdotool("windowactivate", "--sync", ours[0])
        program.window(PART)

    def drag(self, x, y):
        """From this window to a place of the screen, as a hand does it: not in one leap, and with a rest over
        the place, in which the two programs agree that it may be dropped there."""
        from_x, from_y = 60, self.desktop.size[1] - 80
        self._move(from_x, from_y)
        self.desktop.xdotool("mousedown", "1")
        for step in range(1, 16):
            self._move(from_x + (x - from_x) * step // 15, from_y + (y - from_y) * step // 15)
        for step in range(12):
            self._move(x + step % 2, y)
        self.desktop.xdotool("mouseup", "1")

    def _move(self, x, y):
        self.desktop.xdotool("mousemove", str(x), str(y))
        time.sleep(0.15)


def paste_nothing(program):
    program.key("ctrl+v")
    program.told("There is no picture and no file on the clipboard.")


def paste_file(program, desktop, offer):
    with Offer(desktop, offer, desktop.path("plate.svg")) as other:
        other.give_keyboard_back(program)
        program.key("ctrl+v")
        program.wait_focus("image", re.compile("^Drawing plate; feature 1 has no balloon on it"))
    program.picture("bring-01-file")


def paste_picture(program, desktop, offer):
    with Offer(desktop, offer, "picture") as other:
        other.give_keyboard_back(program)
        program.key("ctrl+v")
        program.wait_focus("image", re.compile("^Drawing Pasted picture; feature 1 "))
    program.picture("bring-02-picture")


def drop_files(program, desktop, offer):
    """Of three the bad one is named, and that stays in sight when the next is good."""
    files = [desktop.path(name) for name in ("cover.svg", "wrong.svg", "plate.svg")]
    with Offer(desktop, offer, *files) as other:
        other.drag(800, 400)
        other.give_keyboard_back(program)
        program.find("image", re.compile(r"^Drawing plate \(2\); feature 1 "))
        program.shows("wrong.svg: ")
    program.picture("bring-03-files")
    program.wait_focus("image")
    program.key("Page_Up")
    program.find("image", re.compile("^Drawing cover; feature 1 "))


def drop_picture(program, desktop, offer):
    with Offer(desktop, offer, "picture") as other:
        other.drag(800, 400)
        other.give_keyboard_back(program)
        program.find("image", re.compile("^Drawing Dropped picture; feature 1 "))
    program.picture("bring-04-dropped")


def place_balloons(program):
    """A balloon for each place: by the full stop on the drawing, by the arrow keys in the list."""
    program.wait_focus("image", re.compile("^Drawing Dropped picture"))
    program.key("period")
    program.wait_focus("image", re.compile("place 1 of feature 1 has no balloon of its own on it"))
    program.find("list item", re.compile("^1.1 · place 1, not yet$"))
    program.key("Return")
    program.wait_focus("image", re.compile("place 2 of feature 1 has no balloon"))
    program.find("list item", re.compile("^1.1 · place 1, placed$"))
    program.find("list item", re.compile("^1 · 4X .*, 1 of 4, its 4 places below$"))
    program.key("Return")
    program.wait_focus("image", re.compile("place 3 of feature 1 "))
    program.picture("bring-05-places")
    program.key("ctrl+z")
    program.find("list item", re.compile("^1.2 · place 2, not yet$"))


def choose_pages(program, desktop):
    """Of a PDF of 700 pages the 650th comes in by its number, typed in the list; Shift and Tab go from there to
    the button."""
    kids = " ".join("%d 0 R" % (3 + page) for page in range(700))
    pages = "".join("%d 0 obj << /Type /Page /Parent 2 0 R /MediaBox [0 0 420 297] >> endobj\n" % (3 + page)
                    for page in range(700))
    with open(desktop.path("set.pdf"), "w", encoding="ascii") as pdf:
        pdf.write("%%PDF-1.5\n1 0 obj << /Type /Catalog /Pages 2 0 R >> endobj\n"
                  "2 0 obj << /Type /Pages /Kids [%s] /Count 700 >> endobj\n%s"
                  "trailer << /Root 1 0 R >>\n%%%%EOF\n" % (kids, pages))
    program.key("ctrl+d")
    program.window("Add a drawing")
    program.type("/")
    program.wait_focus("text box")
    program.type(desktop.path("set.pdf").lstrip("/"))
    program.key("Return")
    program.window("Pages of set")
    # Nothing is looked for in the list: reading 500 rows takes seconds each time.
    program.type("650")
    program.picture("bring-07-pages")
    program.key("Return", "shift+Tab", "Return")
    program.window(PART)
    program.find("image", re.compile("^Drawing set page 1;"))
    program.wait_focus("image")
    program.key("Page_Down")
    program.find("image", re.compile("^Drawing set page 650;"))


def fold(program):
    """Left in the list folds, Right unfolds; Enter there goes to the drawing to put the balloon."""
    program.tab_to("list item", re.compile("^1.2 · "), back=True)
    program.key("Left")
    program.gone("list item", re.compile("^1.2 · "))
    program.find("list item", re.compile("^1 · 4X .*, 1 of 4, 4 places$"))
    program.key("Right")
    program.find("list item", re.compile("^1.4 · place 4, not yet$"))
    program.key("Down", "Down", "Down", "Down")
    program.wait_focus("list item", re.compile("^1.4 · "))
    program.key("Return")
    program.wait_focus("image", re.compile("place 4 of feature 1 "))
    program.key("Return")
    program.find("list item", re.compile("^1.4 · place 4, placed$"))


def measure(program):
    """Enter on the balloon of a place measures that place."""
    program.key("p")
    program.key("period", "period", "period", "period")
    program.wait_focus("image", re.compile("balloon 1, place 4, not measured"))
    program.key("Return")
    record(program, "6.90")
    program.key("alt+1")
    program.wait_focus("image", re.compile("balloon 1, place 4, out"))
    program.picture("bring-06-state")


def main(binary, offer):
    cases = Cases()
    with Desktop() as desktop:
        program = cases.start(desktop, binary, "--book", desktop.path("shop.tmbook"))
        steps = [
            ("a job is begun", begin, program, desktop),
            ("with nothing on the clipboard it says so", paste_nothing, program),
            ("a file of another program is pasted", paste_file, program, desktop, offer),
            ("a picture of another program is pasted", paste_picture, program, desktop, offer),
            ("files are dropped", drop_files, program, desktop, offer),
            ("a picture is dropped", drop_picture, program, desktop, offer),
            ("places get balloons of their own", place_balloons, program),
            ("the list folds and unfolds by keys", fold, program),
            ("a place is measured from its balloon", measure, program),
            ("a page beyond the list comes in by its number", choose_pages, program, desktop),
            ("Ctrl+Q ends the program", Program.quit, program),
        ]
        all(cases.run(*step) for step in steps)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
