#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The Batch page in the real window, by keyboard alone: the grid is walked, the words are read, a cell leads to
the bench, a reading is recorded there, and the cell and what is said have changed.

  batch-journey.py PROGRAM

The job is invented: a bore that grows by 0.4 µm a piece, measured on 16 of 20 pieces, and a width.
TM_PICTURES=FOLDER keeps a picture of each step.
"""

import json
import re
import sys

from desktop import Cases, Desktop, Program, expect
from steps import count_rows, record

PART = "BJ-1"
NOISE = [0.4, -0.7, 0.2, 0.9, -0.3, -0.6, 0.5, 0.1, -0.8, 0.3]  # µm, of no particular order
N_MEASURED = 16
BORE = "1 · Ø25 H7 bore"
WIDTH = "2 · 62 ±0.1"


def make_job():
    readings = []
    for piece in range(N_MEASURED):
        size = 25.006 + (0.4 * piece + NOISE[piece % len(NOISE)]) / 1000
        readings.append({"piece": "%03d" % (piece + 1), "feature": "1", "value": "%.4f" % size})
    readings.append({"piece": "003", "feature": "2", "value": "62.25"})
    return {
        "format": "tenthmark-job", "version": 1,
        "job": {"part_number": PART, "part_name": "Batch journey (invented)", "unit": "mm"},
        "gauges": [{"tag": "BM-2", "kind": "bore micrometer", "unit": "mm", "resolution": "0.0001",
                    "error_limit": "0.001", "due": "2099-01-01"}],
        "features": [{"balloon": "1", "name": "bore", "requirement": "Ø25 H7", "method": "BM-2"},
                     {"balloon": "2", "requirement": "62 ±0.1", "method": "BM-2", "check": "every 2"}],
        "pieces": [{"serial": "%03d" % (piece + 1)} for piece in range(20)],
        "readings": readings,
    }


def cell(program, words):
    return program.wait_focus("image", re.compile("^" + re.escape(words)))


def open_page(program):
    program.window(PART)
    program.key("alt+3")
    # The focus is on the newest reading's piece, in the feature that the bench is at.
    cell(program, "Piece 003, %s: out, 250 %% of the band used" % WIDTH)
    program.shows("Piece 003: 62.25 mm, out")
    program.shows("16 of 20 pieces measured")
    program.picture("batch-01-open")


def walk(program):
    program.key("Up")
    cell(program, "Piece 003, %s: in, " % BORE)
    program.key("Right")
    cell(program, "Piece 004, %s: in, " % BORE)
    program.key("Down")
    cell(program, "Piece 004, %s: not due" % WIDTH)
    program.key("Left")
    cell(program, "Piece 003, %s: out, " % WIDTH)
    program.shows("Out")
    program.key("Home")
    cell(program, "Piece 001, %s: to be measured" % WIDTH)
    program.key("Up", "End")
    cell(program, "Piece 020, %s: to be measured" % BORE)


def read_words(program):
    program.shows("Drifting larger")
    program.shows("since the first piece")
    program.shows("until the mean meets the guard")
    slope = program.shows("a piece (")
    expect(re.match(r"\+0\.[34]\d* µm a piece \(", slope), "the slope is %r" % slope)
    program.shows("a false alarm about every 370 pieces")
    program.picture("batch-02-words")


def sort_by_worst(program):
    """The width that is out comes first, and its piece; and all goes back."""
    program.key("ctrl+shift+o", "ctrl+Home")
    cell(program, "Piece 003, %s: out, " % WIDTH)
    program.picture("batch-03-worst")
    program.key("ctrl+shift+o", "ctrl+Home")
    cell(program, "Piece 001, %s: in, " % BORE)


def see_charts(program):
    for key, name in [("ctrl+2", "histogram"), ("ctrl+3", "normal"), ("ctrl+4", "cumulative"), ("ctrl+1", "")]:
        program.key(key)
        program.find("image", re.compile(name, re.I))
        program.picture("batch-04-" + (name or "run"))
    program.key("ctrl+5")
    for index in ("Cp", "Cpk", "Pp", "Ppk", "Cpm", "Cm", "Cmk"):
        program.find("list item", re.compile(r"^%s: (−?[0-9.]+ \(.* to .*\)|not given), " % index))
    program.picture("batch-04-capability")
    program.key("ctrl+1")


def measure(program, book):
    """Enter leads to the bench, at that piece and feature; a reading is recorded there."""
    program.key(*["Right"] * 16)
    cell(program, "Piece 017, %s: to be measured" % BORE)
    program.key("Return")
    program.wait_focus("text box", "Reading")
    program.find("button", "Piece: 017")
    record(program, "25.0195")
    count = count_rows(book, "reading")
    expect(count == N_MEASURED + 2, "the book holds %d readings" % count)


def see_changed(program):
    program.key("alt+3")
    program.wait_focus("image", re.compile("^Piece 017, %s: (?!to be measured)" % re.escape(BORE)))
    program.shows("17 of 20 pieces measured")
    program.shows("Piece 017: 25.0195")
    program.picture("batch-05-changed")


def main(binary):
    cases = Cases()
    with Desktop() as desktop:
        book, job = desktop.path("shop.tmbook"), desktop.path("batch.tmjob")
        with open(job, "w", encoding="utf-8") as file:
            json.dump(make_job(), file, ensure_ascii=False)
        program = cases.start(desktop, binary, "--book", book, job)
        steps = [
            ("the page opens at the newest piece", open_page, program),
            ("arrows walk the grid and each cell says its words", walk, program),
            ("what the batch says is read beside it", read_words, program),
            ("the worst comes first", sort_by_worst, program),
            ("each picture has its words", see_charts, program),
            ("Enter leads to the bench, where the piece is measured", measure, program, book),
            ("the cell and the chart have changed", see_changed, program),
            ("Ctrl+Q ends the program", Program.quit, program),
        ]
        all(cases.run(*step) for step in steps)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
