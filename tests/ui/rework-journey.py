#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A bore that is out, by keyboard alone: nonconformance, rework done, measured again and in, and the first
result still shown.

  rework-journey.py PROGRAM

TM_PICTURES=FOLDER keeps a picture of each step.
"""

import re
import sys

from desktop import Cases, Desktop, Program, expect
from steps import begin_job, choose, close_dialog, list_features, open_bench, press, record

PART = "RW-31"
# Limits of 25 H7 (0/+21 µm) as ISO 286-2 has them.
CALLOUT = "Ø25 H7"
FIRST = "24.990"
AGAIN = "25.012"


def begin(program):
    begin_job(program, PART)
    list_features(program, CALLOUT)


def measure_first(program):
    open_bench(program)
    record(program, FIRST)
    program.find("image", re.compile(r"24\.990 mm, out"))


def raise_nonconformance(program):
    program.key("ctrl+shift+k")
    program.window("Nonconformance")
    program.wait_focus("text box", "Number of the nonconformance")
    program.type("NC-12")
    program.tab_to("text box", "What is wrong")
    program.type("bored under size")
    choose(program, "Decision", "rework")
    program.find("button", "Rework is done")
    program.picture("rework-01-decided")


def do_rework(program):
    press(program, "button", "Rework is done")
    program.window(PART)
    program.shows("Measure again: piece")
    program.picture("rework-02-again")
    program.gone("image", re.compile(r"24\.990 mm, out"))


def measure_again(program):
    record(program, AGAIN)
    program.find("image", re.compile(r"25\.012 mm, in"))
    program.picture("rework-03-in")


def see_first(program):
    program.key("ctrl+l")
    program.window("Readings")
    program.find("label", re.compile("Before the rework"))
    program.find(None, re.compile(r"24\.990 mm"))
    program.find(None, re.compile(r"25\.012 mm"))
    program.picture("rework-04-readings")
    close_dialog(program, PART)


def take_back(program):
    program.key("ctrl+shift+k")
    program.window("Nonconformance")
    program.find("button", "Take back")
    program.picture("rework-05-done")
    press(program, "button", "Take back")
    program.shows("not done yet")
    close_dialog(program, PART)
    program.key("ctrl+l")
    program.window("Readings")
    program.find(None, re.compile(r"24\.990 mm"))
    expect(not program.find_all("label", re.compile("Before the rework")),
           "the first result does not count again")
    close_dialog(program, PART)


def main(binary):
    cases = Cases()
    with Desktop() as desktop:
        program = cases.start(desktop, binary, "--book", desktop.path("shop.tmbook"))
        steps = [
            ("a job with one bore is begun", begin, program),
            ("the bore is out", measure_first, program),
            ("a nonconformance decides on rework", raise_nonconformance, program),
            ("the rework is done", do_rework, program),
            ("measured again, it is in", measure_again, program),
            ("the first result is still shown", see_first, program),
            ("the rework is taken back", take_back, program),
            ("Ctrl+Q ends the program", Program.quit, program),
        ]
        all(cases.run(*step) for step in steps)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
