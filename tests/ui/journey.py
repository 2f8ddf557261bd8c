#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The main job in the real window, by keyboard alone: a new job, its features, a piece, readings
with a slip caught, a correction, the report, and the report read back.

  journey.py PROGRAM

TM_PICTURES=FOLDER keeps a picture of each step.
"""

import os
import re
import sys

from desktop import Cases, Desktop, Program, expect, wait_until
from steps import (add_person, begin_job, close_dialog, count_rows, open_bench, open_report, press, record,
                   type_reading)
from workbook import find_table, read_workbook

PART = "JT-204"
PIECE = "A-017"
PERSON = "MK Marta Kern"
# Limits of the first two as ISO 286-2 has them for 25 H7 (0/+21 µm) and 12 h6 (-11/0 µm).
FEATURES = [
    {"callout": "Ø25 H7", "typed": "25.012", "value": 25.012, "lower": 25.000, "upper": 25.021},
    {"callout": "dia 12 h6", "typed": "11995", "value": 11.995, "lower": 11.989, "upper": 12.000},
    {"callout": "40 ±0.1", "typed": "40.03", "value": 40.03, "lower": 39.9, "upper": 40.1},
]
WRONG = {"typed": "40.21", "value": 40.21, "reason": "read the wrong mark"}
# One turn of a metric thimble, 0.5 mm (common practice), above the first value.
SLIP = "25.512"


def list_features(program):
    for number, feature in enumerate(FEATURES, 1):
        program.tab_to("text box", "Requirement")
        program.put(feature["callout"])
        program.shows("Reads as")
        program.picture("journey-02-feature-%d" % number)
        program.key("Return")
        program.find("row", "%d · %s" % (number, feature["callout"]))


def add_piece(program):
    program.tab_to("text box", "Serial of the next piece")
    program.put(PIECE)
    program.key("Return")
    program.find("row", "Piece " + PIECE)


def catch_slip(program, book):
    open_bench(program)
    program.picture("journey-04-bench")
    type_reading(program, SLIP)
    program.key("Return")
    program.shows("one thimble turn from 25.012")
    program.wait_text(SLIP)
    expect(count_rows(book, "reading") == 0, "the slip was recorded without asking")
    program.picture("journey-05-slip")


def take_readings(program, book):
    program.put(FEATURES[0]["typed"])
    program.key("Return")
    program.told("Recorded 25.012 mm")
    program.picture("journey-06-recorded")
    type_reading(program, FEATURES[1]["typed"])
    program.key("Return")
    record(program, WRONG["typed"])
    program.find("image", re.compile(r"^40 ±0\.1: .*40\.21 mm, out"))
    program.find("list item", re.compile(r"^2 · dia 12 h6, in$"))
    expect(count_rows(book, "reading") == 3, "the book does not hold the three readings")
    program.picture("journey-07-out")


def correct_reading(program, book):
    program.key("ctrl+l")
    program.window("Readings")
    program.picture("journey-08-readings")
    press(program, "button", "Correct… 40.21 mm")
    program.window("Correct a reading")
    program.wait_focus("text box", "What it should have been")
    program.put(FEATURES[2]["typed"])
    program.tab_to("text box", "Reason")
    program.put(WRONG["reason"])
    program.picture("journey-09-correction")
    program.key("Return")
    program.window("Readings")
    program.find("label", re.compile("Corrected to 40.03 mm: " + WRONG["reason"]))
    program.picture("journey-10-corrected")
    close_dialog(program, PART)
    program.find("image", re.compile(r"^40 ±0\.1: .*40\.03 mm, in"))
    program.told("Corrected to 40.03 mm")
    expect(count_rows(book, "reading") == 4, "the corrected reading did not stay beside the new one")


def export_report(program, path):
    open_report(program)
    program.find("image", re.compile("^First-article report, page 1 of"))
    program.picture("journey-11-report")
    program.key("ctrl+2")
    program.find("tree grid", "Characteristics")
    program.key("ctrl+e")
    program.window("Export the report")
    program.picture("journey-12-chooser")
    program.wait_focus("text box")
    program.put(path)
    program.key("Return")
    program.window(PART)
    wait_until("the report on the disk", lambda: os.path.exists(path))
    program.told(os.path.basename(path))
    program.picture("journey-13-exported")


def check_characteristics(rows):
    table = find_table(rows, "Smallest result")
    expect(len(table) == len(FEATURES), "the report has %d characteristics" % len(table))
    for number, (feature, row) in enumerate(zip(FEATURES, table), 1):
        wanted = {
            "No.": str(number), "Requirement": feature["callout"], "Piece": PIECE, "Unit": "mm",
            "Lower limit": feature["lower"], "Upper limit": feature["upper"],
            "Smallest result": feature["value"], "Largest result": feature["value"], "Verdict": "in",
        }
        for heading, value in wanted.items():
            expect(row.get(heading) == value,
                   "characteristic %d, %s: %r, not %r" % (number, heading, row.get(heading), value))


def check_readings(rows):
    """Every reading as typed, the corrected one beside the one that stands for it."""
    initials = PERSON.split()[0]
    found = [tuple(row.get(heading) for heading in ("Feature", "Piece", "As typed", "Value", "By", "Status",
                                                    "Corrects", "Reason"))
             for row in find_table(rows, "As typed")]
    last = FEATURES[2]
    wanted = [("%d" % number, PIECE, feature["typed"], feature["value"], initials, "counts", None, None)
              for number, feature in enumerate(FEATURES[:2], 1)]
    wanted += [("3", PIECE, WRONG["typed"], WRONG["value"], initials, "corrected by 4", None, None),
               ("3", PIECE, last["typed"], last["value"], initials, "counts", "3", WRONG["reason"])]
    expect(found == wanted, "the readings are %r, not %r" % (found, wanted))


def read_report_back(path):
    sheets = read_workbook(path)
    facts = [cell for row in sheets["Part and order"] for cell in row.values()]
    expect(PART in facts and PIECE in facts, "the report does not name the part and the piece")
    check_characteristics(sheets["Characteristics"])
    check_readings(sheets["Readings"])


def open_again(program):
    """Home lists the job; Enter opens it where it was left."""
    program.find("row", PART)
    program.picture("journey-14-home")
    program.tab_to("search box", "Search the jobs")
    program.put(PART.lower())
    program.key("Return")
    program.window(PART)
    program.find("list item", "3 · 40 ±0.1, in")
    program.find("label", "3 of 3 measured")


def main(binary):
    cases = Cases()
    with Desktop() as desktop:
        book = desktop.path("shop.tmbook")
        report = desktop.path("report.xlsx")
        program = cases.start(desktop, binary, "--book", book)
        steps = [
            ("a new job is begun", begin_job, program, PART, ""),
            ("three features are listed by callout", list_features, program),
            ("a piece is added", add_piece, program),
            ("a person is added", add_person, program, PERSON),
            ("a slip of one thimble turn is asked about", catch_slip, program, book),
            ("readings are recorded", take_readings, program, book),
            ("a reading is corrected with its reason", correct_reading, program, book),
            ("the report is exported", export_report, program, report),
            ("the report says what was typed", read_report_back, report),
            ("Ctrl+Q ends the program", Program.quit, program),
        ]
        if all(cases.run(*step) for step in steps):
            program = cases.start(desktop, binary, "--book", book)
            cases.run("the job is there at the next start", open_again, program)
            cases.run("Ctrl+Q ends it again", Program.quit, program)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
