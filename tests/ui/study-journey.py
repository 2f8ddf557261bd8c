#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A gauge study in the real window, by keyboard alone: planned, taken blind in the order that the screen
asks for, analysed, put into the method and taken out again; everything on it has a name.

  study-journey.py PROGRAM JOBFILE

TM_PICTURES=FOLDER keeps a picture of each step.
"""

import os
import re
import sys

from desktop import Cases, Desktop, Program, expect
from names import expect_named
from steps import count_rows, press

PART = "BH-2047"
ASKED = re.compile(r"^Reading of piece (\d+) by (RT|EL), repeat (\d) of 2$")
N_READINGS = 2 * 2 * 2


def count_readings(book):
    return count_rows(book, "current_study_reading")


def open_studies(program):
    program.key("alt+4")
    program.find("tree grid", "Gauges")
    press(program, "button", "Studies", back=True)
    program.shows("No study yet")
    expect_named(program)
    program.picture("studies-01-empty")


def refuse_plan(program):
    program.wait_focus("button", "Plan the first study…")
    program.key("space")
    program.window("New study")
    program.tab_to("text box", "Pieces: names with commas between, or how many")
    program.put("1")
    program.key("Return")
    program.shows("A study needs two pieces or more")
    expect_named(program)
    program.picture("studies-02-refused")


def plan(program):
    program.put("2")
    program.tab_to("text box", "People: initials with commas between")
    program.put("RT, EL")
    program.tab_to("text box", "Repeats: how often each takes each piece")
    program.put("2")
    program.shows("8 readings in all")
    program.key("Return")
    program.window(PART)
    program.wait_focus("text box", ASKED)
    expect_named(program)
    program.picture("studies-03-planned")


def expect_blind(program, values):
    """No value taken before is anywhere on the screen, seen or read out."""
    told = [value for value in values if value in program.dump()]
    expect(not told, "the screen tells %s" % ", ".join(told))


def take(program, book):
    seen, values = set(), []
    for n in range(N_READINGS):
        program.shows("%d of %d taken" % (n, N_READINGS))
        piece, person, repeat = ASKED.match(program.wait_focus("text box", ASKED).name).groups()
        expect((piece, person, repeat) not in seen, "the same is asked for twice")
        seen.add((piece, person, repeat))
        expect_blind(program, values)
        value = "52.%03d" % (4 + 8 * int(piece) + 2 * (person == "EL") + int(repeat))
        program.type(value)
        program.wait_text(value)
        values.append(value)
        if n == 3:
            program.picture("studies-04-half")
        program.key("Return")
    program.find("button", "Put into the method")
    expect(count_readings(book) == N_READINGS, "the book does not hold every reading")


def take_back(program, book):
    """Ctrl+Z takes the first one back; it is measured again."""
    first = program.wait_focus("text box", ASKED).name
    program.type("52.011")
    program.key("Return")
    program.shows("1 of 8 taken")
    program.key("ctrl+z")
    program.shows("is to be measured again")
    expect(program.wait_focus("text box", ASKED).name == first, "another one is asked for")
    expect(count_readings(book) == 0, "the book still holds it")


def read_outcome(program):
    program.wait_focus("button", "Put into the method")
    program.shows("of the band")
    program.find("image", re.compile("^What each part spreads, six standard deviations, in mm"))
    program.find("image", re.compile("^Readings less the mean of their piece: pieces 2, people 2, repeats 2"))
    program.shows("in place of 0.001 mm; and a line for people")
    expect_named(program)
    program.picture("studies-05-outcome")


def put_and_undo(program):
    program.key("space")
    program.shows("holds this study")
    program.picture("studies-06-in-the-method")
    program.key("ctrl+z")
    program.shows("in place of 0.001 mm")


def compare(program):
    program.tab_to("list item", re.compile("^Study 1, "), back=True)
    program.key("End", "Return")
    program.wait_focus("combo box", re.compile("^Feature"))
    expect_named(program)
    program.picture("studies-07-methods")


def main(binary, job):
    cases = Cases()
    with Desktop() as desktop:
        book = desktop.path("shop.tmbook")
        program = cases.start(desktop, binary, "--book", book, os.path.abspath(job))
        program.window(PART)
        steps = [
            ("The empty view says what to do", open_studies, []),
            ("One piece is no study", refuse_plan, []),
            ("A study is planned", plan, []),
            ("The last reading is taken back", take_back, [book]),
            ("The readings are taken blind", take, [book]),
            ("What it says can be read", read_outcome, []),
            ("It goes into the method, and out", put_and_undo, []),
            ("Two methods are compared", compare, []),
        ]
        if all(cases.run(title, step, program, *more) for title, step, more in steps):
            cases.run("it ends", Program.quit, program)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
