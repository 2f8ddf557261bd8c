#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A rough bore brought into its band in the real window, by keyboard alone: measured, the cut planned,
another number tried, the cut recorded, measured again; a cut corrected and one withdrawn.

  cut-journey.py PROGRAM

The job and its sizes are invented.  TM_PICTURES=FOLDER keeps a picture of each step.
"""

import json
import re
import sys
import time

from desktop import Cases, Desktop, Program, expect, wait_until
from steps import close_dialog, count_rows, go_to_step, open_bench, type_reading

PART = "SL-77"
BORE = "1 · Ø30 H7 Seal bore"
NUMBER = re.compile(r"^(Dial|Proving cut) (0\.\d+) mm on the radius")
CHANCES = re.compile(r"^in (.+) %, metal left (.+) %, metal gone (.+) %$")

JOB = {
    "format": "tenthmark-job", "version": 1,
    "job": {"part_number": PART, "part_name": "Sleeve, seal carrier (invented)", "unit": "mm",
            "material": "steel", "standard": "ISO", "decision": "guarded"},
    "people": [{"initials": "AB", "name": "A. Bench (invented)"}],
    "gauges": [{"tag": "BM-1", "kind": "bore micrometer", "unit": "mm", "resolution": "0.001",
                "error_limit": "0.0015"}],
    "methods": [{"name": "Bore micrometer", "gauges": ["BM-1"], "repeatability": "0.0008",
                 "repeatability_dof": "30"}],
    "tools": [{"name": "Boring bar 20", "unit": "mm", "reads": "radius", "graduation": "0.002",
               "least_cut": "0.004", "backlash": "0.1", "spring_passes": 2}],
    "features": [
        {"balloon": "1", "kind": "bore", "name": "Seal bore", "requirement": "Ø30 H7", "unit": "mm",
         "nominal": "30", "lower": "30.000", "upper": "30.021", "method": "Bore micrometer",
         "stations": ["mouth/12", "bottom/12"]},
        {"balloon": "2", "kind": "attribute", "name": "Edges", "requirement": "Break all sharp edges"}],
    "pieces": [{"serial": "001"}],
}


def open_job(program):
    program.window(PART)
    open_bench(program)
    program.shows("Not measured")


def go_to_bore(program, station="mouth 12"):
    go_to_step(program, BORE, station)


def read(program, typed):
    """Types a reading; a rough size is so far off that it is asked about."""
    type_reading(program, typed)
    program.key("Return")
    answer = wait_until("an answer to " + typed, lambda: next(
        (word for one in program.look().walk() for word in (one.description, one.name)
         if word.startswith("Recorded " + typed) or "Enter again" in word), None))
    if not answer.startswith("Recorded"):
        time.sleep(0.4)  # the program takes no Enter for an answer that comes at once
        program.key("Return")
    program.told("Recorded " + typed)


def read_both(program, mouth, bottom):
    read(program, mouth)
    read(program, bottom)
    go_to_bore(program)


def read_number(program):
    """The number to dial, as it is read out."""
    return wait_until("the number to dial", lambda: next(
        (NUMBER.match(one.name).group(2) for one in program.look().walk() if NUMBER.match(one.name)), None))


def read_chances(program):
    """In, metal left and metal gone, in percent; "under 0.1" is half of that."""
    def parse(text):
        return 0.05 if text.startswith("under") else 99.95 if text.startswith("over") else float(text)
    match = wait_until("the chances", lambda: next(
        (CHANCES.match(one.name) for one in program.look().walk() if CHANCES.match(one.name)), None))
    return [parse(text) for text in match.groups()]


def measure(program):
    read_both(program, "29.950", "29.951")
    program.find("list item", BORE + ", metal left")
    program.shows("plan the next cut (F4)")
    program.shows("spindle stopped and isolated, chips cleared, edge deburred")
    program.picture("cut-01-metal-left")


def plan(program):
    program.key("F4")
    program.wait_focus("text box", "Dialled")
    number = read_number(program)
    chances = read_chances(program)
    expect(float(number) * 1000 % 2 == 0, "%s is no whole mark of 0.002" % number)
    expect(abs(sum(chances) - 100) < 0.5, "the chances are %s" % chances)
    expect(chances[2] <= 1, "more than the accepted risk: %s" % chances)
    program.shows("accepted risk of metal gone: 1 %")
    program.shows("Assumed: no cut of Boring bar 20 is on record")
    program.shows("Turn back by more than 0.1")
    program.shows("2 spring passes")
    program.find("button", "Record cut")
    program.picture("cut-02-plan")


def try_another(program):
    """The chances follow what is typed, and what is typed stays."""
    before = read_chances(program)
    program.put("0.02")
    program.shows("10 marks of 0.002")
    wait_until("other chances", lambda: read_chances(program)[2] > before[2])
    program.shows("after 0.02 dialled")
    program.picture("cut-03-another-number")
    program.key("F4")
    program.wait_focus("text box", "Reading")
    program.key("F4")
    program.wait_focus("text box", "Dialled")
    program.wait_text("0.02")


def refuse(program, book):
    """Nonsense, a slip of the decimal point and a cut that takes it over: nothing is recorded."""
    program.put("0.0x")
    program.key("Return")
    program.shows("“0.0x”")
    program.wait_text("0.0x")
    program.put("2")
    program.shows("look at the decimal point")
    program.put("0.06")
    program.key("Return")
    program.shows("Was that really dialled?")
    program.wait_text("0.06")
    expect(count_rows(book, "cut") == 0, "a cut is in the book")
    program.picture("cut-04-asked")


def record(program, book, dialled, n):
    program.wait_focus("text box", "Dialled")
    program.put(dialled)
    program.key("Return")
    program.told("Recorded cut of %s mm on the radius, 2 spring passes" % dialled)
    program.wait_focus("text box", "Reading")
    expect(count_rows(book, "cut") == n, "the cut is not in the book")
    program.shows("A cut was made: clean and deburr, then read mouth 12 again")
    program.shows("Not measured")


def cut_and_read(program, book):
    record(program, book, "0.020", 1)
    program.picture("cut-05-recorded")
    read_both(program, "29.990", "29.991")
    program.find("list item", BORE + ", metal left")


def plan_again(program):
    program.key("F4")
    program.wait_focus("text box", "Dialled")
    program.wait_text("")
    program.shows("Boring bar 20 so far: takes")
    program.shows("(1 cut)")
    read_number(program)
    program.picture("cut-06-second-plan")


def finish(program, book):
    record(program, book, "0.010", 2)
    read_both(program, "30.010", "30.011")
    program.find("list item", BORE + ", in")
    program.picture("cut-07-in")


def correct(program, book):
    program.key("ctrl+l")
    program.window("Readings")
    program.shows("0.040 mm came off, 0.040 mm was asked for")
    program.picture("cut-08-readings")
    program.tab_to("button", re.compile("^Correct… cut of 0.020 mm"))
    program.key("Return")
    program.window("Correct a cut")
    program.wait_focus("text box", "What it should have been")
    program.wait_text("0.020")
    program.put("0.018")
    program.tab_to("text box", "Reason")
    program.type("the dial was misread")
    program.picture("cut-09-correct")
    program.key("Return")
    program.window("Readings")
    program.shows("Corrected to cut of 0.018 mm on the radius, 2 spring passes: the dial was misread")
    close_dialog(program, PART)
    program.find("list item", BORE + ", in")
    expect(count_rows(book, "cut") == 3, "the correction is no row of its own")


def withdraw(program, book):
    """A cut that was never made: with it gone, the bore is in again."""
    go_to_bore(program)
    program.key("F4")
    record(program, book, "0.004", 4)
    program.key("ctrl+z")
    program.window("Withdraw a cut")
    program.wait_focus("text box", "Reason")
    program.type("that was another piece")
    program.key("Return")
    program.window(PART)
    program.find("list item", BORE + ", in")
    expect(count_rows(book, "cut") == 4, "a row is gone from the book")
    program.key("ctrl+l")
    program.window("Readings")
    program.shows("Withdrawn: that was another piece")
    program.picture("cut-10-withdrawn")
    close_dialog(program, PART)


def main(binary):
    cases = Cases()
    with Desktop() as desktop:
        book, job = desktop.path("shop.tmbook"), desktop.path("sleeve.tmjob")
        with open(job, "w", encoding="utf-8") as file:
            json.dump(JOB, file, ensure_ascii=False)
        program = cases.start(desktop, binary, "--book", book, job)
        steps = [
            ("the job opens at the bench", open_job, program),
            ("the rough bore is measured: metal left", measure, program),
            ("F4 plans the cut", plan, program),
            ("another number shows its own chances", try_another, program),
            ("what cannot be right is not recorded", refuse, program, book),
            ("the cut is recorded and the bore read again", cut_and_read, program, book),
            ("the next plan knows the tool", plan_again, program),
            ("the last cut brings it in", finish, program, book),
            ("a cut is corrected with its reason", correct, program, book),
            ("a cut that was never made is withdrawn", withdraw, program, book),
            ("Ctrl+Q ends the program", Program.quit, program),
        ]
        all(cases.run(*step) for step in steps)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
