#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A drawing by keyboard alone: added from its file, balloons put, moved, taken back and taken off, one feature
typed on it, the bench and back, the state of a balloon, and all of it still there when opened again.

  drawing-journey.py PROGRAM

TM_PICTURES=FOLDER keeps a picture of each step.
"""

import re
import sys

from desktop import Cases, Desktop, Program
from names import check_names
from steps import begin_job, list_features, open_job_page, record

PART = "DR-7"
# Limits of 25 H7 (0/+21 µm) as ISO 286-2 has them.
BORE = "Ø25 H7"
WIDTH = "40 ±0.1"
DRAWING = """<svg xmlns="http://www.w3.org/2000/svg" width="297mm" height="210mm" viewBox="0 0 297 210">
<rect x="60" y="50" width="120" height="80" fill="none" stroke="black"/>
<circle cx="120" cy="90" r="20" fill="none" stroke="black"/>
<text x="200" y="190" font-size="5">Invented example</text></svg>
"""


def begin(program):
    begin_job(program, PART)
    list_features(program, BORE, WIDTH)


def see_nothing(program):
    program.key("ctrl+2")
    program.shows("No drawing yet")
    program.wait_focus("button", "Add the drawing of this part…")
    program.picture("drawing-01-none")


def choose_file(program, path):
    program.key("ctrl+d")
    program.window("Add a drawing")
    program.type("/")
    program.wait_focus("text box")
    program.type(path.lstrip("/"))
    program.wait_text(path)
    program.key("Return")
    program.window(PART)


def refuse(program, desktop):
    with open(desktop.path("wrong.pdf"), "w", encoding="utf-8") as wrong:
        wrong.write("this is no PDF")
    choose_file(program, desktop.path("wrong.pdf"))
    program.shows("wrong.pdf: ")
    program.shows("No drawing yet")


def add(program, desktop):
    with open(desktop.path("bracket.svg"), "w", encoding="utf-8") as drawing:
        drawing.write(DRAWING)
    choose_file(program, desktop.path("bracket.svg"))
    program.wait_focus("image", "Drawing bracket; feature 1 has no balloon on it: " + BORE)
    check_names(program, [("image", re.compile("^Drawing bracket")), ("list", "Balloons"),
                          ("combo box", re.compile("^Drawing")), ("button", "More for this drawing")])
    program.picture("drawing-02-added")


def place(program):
    program.key("Return")
    program.wait_focus("image", "Drawing bracket; feature 2 has no balloon on it: " + WIDTH)
    program.find("label", "1 of 2 placed")
    program.key("Return")
    program.find("label", "2 of 2 placed")
    program.wait_focus("image", re.compile("^Drawing bracket; balloon 2, not measured: " + re.escape(WIDTH)))


def move(program):
    program.key("Right", "Right", "Down", "ctrl+Left", "shift+Up")
    program.key("p")
    program.wait_focus("image", re.compile("^Drawing bracket; balloon 1, "))
    program.key("Up", "Up", "Up")
    program.picture("drawing-03-placed")


def take_off(program):
    program.key("Delete")
    program.wait_focus("image", re.compile("feature 1 has no balloon"))
    program.find("label", "1 of 2 placed")
    program.key("ctrl+z")
    program.wait_focus("image", re.compile("balloon 1, "))
    program.find("label", "2 of 2 placed")


def type_feature(program):
    program.key("ctrl+i")
    program.wait_focus("text box", "Requirement of the new feature")
    program.type("Ra 1.6")
    program.shows("roughness")
    program.key("Return")
    program.wait_focus("image", re.compile("^Drawing bracket; balloon 3, not measured: Ra 1.6"))
    program.find("label", "3 of 3 placed")


def measure(program):
    program.key("p", "p")
    program.wait_focus("image", re.compile("balloon 1, "))
    program.key("Return")
    program.wait_focus("text box", "Reading")
    program.key("F7")
    program.find("image", re.compile("^Drawing bracket; balloon 1, not measured"))
    program.picture("drawing-04-bench")
    record(program, "24.990")
    program.key("Page_Up")
    program.find("image", re.compile("^Drawing bracket; balloon 1, out"))
    program.picture("drawing-05-out")
    program.key("F7")
    program.gone("image", re.compile("^Drawing bracket"))


def see_state(program):
    program.key("alt+1")
    program.wait_focus("image", re.compile("^Drawing bracket; balloon 1, out: " + re.escape(BORE)))
    program.picture("drawing-06-state")


def keep_numbers(program):
    """What was measured keeps its number; the others may not change theirs around it."""
    program.key("n", "n")
    program.wait_focus("image", re.compile("balloon 3, "))
    program.key(*["Left"] * 40, *["Up"] * 25)
    program.key("ctrl+shift+b")
    program.shows("it has been measured under its number")
    program.find("list item", "1 · " + BORE + ", placed")


def open_again(program):
    program.wait_focus("row", re.compile(PART))
    program.key("Return")
    program.window(PART)
    open_job_page(program)
    program.key("ctrl+2")
    program.wait_focus("image", re.compile("^Drawing bracket"))
    program.find("label", "3 of 3 placed")
    program.picture("drawing-07-again")


def main(binary):
    cases = Cases()
    with Desktop() as desktop:
        program = cases.start(desktop, binary, "--book", desktop.path("shop.tmbook"))
        steps = [
            ("a job with two features is begun", begin, program),
            ("without a drawing it says what one is good for", see_nothing, program),
            ("what is no drawing is refused", refuse, program, desktop),
            ("a drawing is added from its file", add, program, desktop),
            ("Enter puts the balloons", place, program),
            ("arrows move them", move, program),
            ("one is taken off, and that is taken back", take_off, program),
            ("a feature is typed on the drawing", type_feature, program),
            ("Enter measures it, and its balloon is out", measure, program),
            ("the drawing shows the state", see_state, program),
            ("numbers stay once something is recorded", keep_numbers, program),
            ("Ctrl+Q ends the program", Program.quit, program),
        ]
        done = all(cases.run(*step) for step in steps)
        if done:
            again = cases.start(desktop, binary, "--book", desktop.path("shop.tmbook"))
            done = (cases.run("opened again, the drawing is still there", open_again, again)
                    and cases.run("it ends", Program.quit, again))
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
