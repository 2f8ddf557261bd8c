#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What is done about a batch, in the real window and by keyboard alone: an event is recorded, refused and
taken back, rules are chosen with how often they speak, pieces are held back, a plan is saved, and the run
is looked at on the Bench; everything on it has a name.

  batch-tools-journey.py PROGRAM JOBFILE

TM_PICTURES=FOLDER keeps a picture of each step.
"""

import os
import re
import sys

from desktop import Cases, Desktop, Program, expect, wait_until
from names import expect_named
from steps import ask_book, choose, close_dialog, open_bench, press


PART = "VB-3316"


def open_tool(program, button, window):
    program.tab_to("button", button, steps=90)
    program.key("space")
    program.window(window)


def record_event(program, book):
    program.key("alt+3")
    program.find("button", "Events…")
    open_tool(program, "Events…", "Events between pieces")
    program.find("list item", re.compile("^New tool or insert, before piece 031"))
    expect_named(program)
    program.picture("batch-tools-01-events")
    press(program, "button", "Add…")
    program.window("New event between pieces")
    program.tab_to("text box", re.compile("^Before piece"))
    program.put("999")
    program.key("Return")
    program.shows("the job has no piece “999”")
    expect_named(program)
    program.picture("batch-tools-02-refused")
    program.put("045")
    program.tab_to("text box", "Note")
    program.put("chipped edge")
    program.key("Return")
    program.window("Events between pieces")
    program.find("list item", re.compile("before piece 045.*chipped edge"))
    wait_until("the book to hold the event",
               lambda: ask_book(book, "SELECT count(*) FROM current_event") == [(2,)])


def remove_event(program, book):
    program.tab_to("list item", re.compile("before piece"))
    program.key("End")
    program.wait_focus("list item", re.compile("before piece 045"))
    program.key("Return")
    program.window("Event between pieces")
    press(program, "button", "Remove")
    program.window("Events between pieces")
    program.gone("list item", re.compile("before piece 045"))
    expect(ask_book(book, "SELECT count(*) FROM current_event") == [(1,)], "the book still holds the event")
    close_dialog(program, PART)


def choose_rules(program, book):
    open_tool(program, "Charts…", "Charts of feature 1")
    program.shows("about every 370 pieces (exact)")
    expect_named(program)
    program.picture("batch-tools-03-charts")
    press(program, "switch", re.compile("^Eight points in a row on one"))
    # 152.73: C. W. Champ, W. H. Woodall, Technometrics 29 (1987), table 1.
    program.shows("about every 153 pieces (exact)")
    press(program, "switch", re.compile("^Six "))
    program.shows("(simulated)")
    program.key("space")
    program.shows("(exact)")
    program.tab_to("text box", "Pieces in a group")
    program.put("0")
    program.key("Return")
    program.shows("is not a whole number from 1")
    program.put("1")
    program.key("Return")
    program.window(PART)
    expect(ask_book(book, "SELECT chart_rules FROM current_feature WHERE balloon = '1'")
           == [("beyond-3s 8-one-side",)], "the book does not hold the rules")


def hold_back(program, book):
    """Feature 3 has the shift; it is walked to on the grid."""
    program.tab_to("image", re.compile("^Piece [0-9]+, 1 "), back=True, steps=90)
    program.key("Down", "Down")
    program.wait_focus("image", re.compile("^Piece [0-9]+, 3 "))
    program.shows("h7")
    open_tool(program, "Hold back…", "Hold back")
    program.wait_focus("list item", re.compile("^Piece .*not decided"))
    expect_named(program)
    program.picture("batch-tools-04-hold")
    program.key("space")
    choose(program, "Disposition", "hold")
    program.tab_to("text box", re.compile("^Note"))
    program.put("until it is measured")
    program.key("Return")
    program.find("list item", re.compile("until it is measured, hold$"))
    program.picture("batch-tools-05-held")
    rows = ask_book(book, "SELECT disposition, disposition_note FROM current_piece WHERE disposition <> ''")
    expect(("hold", "until it is measured") in rows, "the book holds %s" % rows)
    close_dialog(program, PART)


def plan(program, book):
    open_tool(program, "How many…", "How many to measure for feature 3")
    program.shows("chosen at random")
    program.shows("Not said")
    expect_named(program)
    program.picture("batch-tools-06-how-many")
    program.tab_to("text box", "Pieces in the lot")
    program.put("100")
    program.shows("Measure 45 of the 100")
    program.tab_to("text box", "Share out that must not pass (%)")
    program.put("x")
    program.shows("write a percentage")
    close_dialog(program, PART)


def look_at_run(program):
    open_bench(program)
    program.key("ctrl+4")
    program.find("image", re.compile("Ø16 H7|feature 1|16"))
    program.shows("more pieces")
    expect_named(program)
    program.picture("batch-tools-07-run")


def main(binary, job):
    cases = Cases()
    with Desktop() as desktop:
        book = desktop.path("shop.tmbook")
        program = cases.start(desktop, binary, "--book", book, os.path.abspath(job))
        program.window(PART)
        steps = [
            ("An event is recorded", record_event, [book]),
            ("It is taken back", remove_event, [book]),
            ("Rules are chosen", choose_rules, [book]),
            ("A piece is held back", hold_back, [book]),
            ("How many to measure", plan, [book]),
            ("The run on the Bench", look_at_run, []),
        ]
        if all(cases.run(title, step, program, *more) for title, step, more in steps):
            cases.run("it ends", Program.quit, program)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
