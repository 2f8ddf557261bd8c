#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""One bore by four means in the real window, by keyboard alone: an inside caliper, a small-hole gauge, a
telescoping gauge and pins.  Each reading tightens the estimate; the caliper cannot settle a band of
0.001 in; class X pins, go plus and no-go minus, close it; class ZZ minus pins leave some of it open.

  pins_journey.py PROGRAM JOBFILE

The job is invented (sample-jobs/guide-block-inch.tmjob).  TM_PICTURES=FOLDER keeps a picture of each step.
"""

import os
import re
import sys

from desktop import Cases, Desktop, Program, expect, wait_until
from steps import choose, close_dialog, count_rows, go_to_step, open_bench, type_reading

PART = "GB-204"
BORE = "1 · Ø.438 +.001 -.000 Guide rod bore"
CALIPER = "Inside caliper and micrometer"
SMALL_HOLE = "Small-hole gauge and micrometer"
TELESCOPING = "Telescoping gauge and micrometer"
TOGETHER = re.compile(r"^together: 0\.43\d+ ± (0\.0\d+) in")


def open_third(program):
    """The bore of the third piece, where nothing has been read."""
    program.window(PART)
    open_bench(program)
    program.key("ctrl+Next")
    program.find("button", "Piece: 3")
    go_to_bore(program)
    program.shows("Not measured")


def go_to_bore(program):
    """Back to the first feature: Enter goes on to the next one."""
    go_to_step(program, BORE)


def read_by(program, name, typed):
    go_to_bore(program)
    choose(program, "Gauge", name)
    # Digits go to the entry, wherever the keyboard is.
    program.type(typed)
    program.wait_text(typed)
    program.key("Return")
    program.told("Recorded 0%s in" % typed)
    go_to_bore(program)


def read_caliper(program):
    go_to_bore(program)
    choose(program, "Gauge", CALIPER)
    # Before anything is read: the words under the gauge, and what to do instead.
    program.shows("cannot settle this band")
    program.shows("Settle it with pins 0.438 plus go and 0.4385 minus no-go, class X")
    program.picture("pins-01-caliper-cannot")
    read_by(program, CALIPER, ".4388")
    program.shows("0.4388 ± 0.0021 in: cannot settle this band")
    program.shows("Too close")
    program.picture("pins-02-caliper")


def find_spread(program):
    """The half width of all methods together."""
    return next((float(TOGETHER.match(one.name).group(1)) for one in program.look().walk()
                 if TOGETHER.match(one.name)), None)


def find_closer(program, spreads):
    spread = find_spread(program)
    return spread if spread is not None and (not spreads or spread < spreads[-1]) else None


def tighten(program, spreads, name, *values):
    """Readings by one more method; what all together say is closer than before."""
    for typed in values:
        read_by(program, name, typed)
    spread = wait_until("what all methods say together, closer than before", lambda: find_closer(program, spreads))
    program.shows(name)
    spreads.append(spread)
    program.picture("pins-03-together-%d" % len(spreads))


def close_with_class_x(program, book):
    """F2 puts the pin of the plan into the entry; one key each says what it did."""
    program.key("F2")
    program.wait_focus("text box", "Pin trial")
    program.wait_text("0.438 X plus")
    program.picture("pins-04-go-pin")
    program.key("plus")
    program.told("Recorded pin 0.438, class X plus, went")
    program.wait_text("0.4385 X minus")
    expect(count_rows(book, "pin_trial") == 5, "the trial is not in the book")
    program.key("minus")
    program.told("Recorded pin 0.4385, class X minus, did not go")
    program.shows("prove the band: 0.43800 to 0.43854 in")
    program.shows("by methods and pins together")
    program.find("list item", BORE + ", in")
    program.wait_focus("text box", "Reading")
    program.picture("pins-05-closed")
    expect(count_rows(book, "pin_trial") == 6, "the second trial is not in the book")


def leave_open_with_class_zz(program):
    """The second piece: pins of the coarse set, typed with their outcome."""
    program.key("ctrl+Prior")
    program.find("button", "Piece: 2")
    go_to_bore(program)
    for typed, said in [(".438 ZZ minus+", "pin 0.438, class ZZ minus, went"),
                        (".439 ZZ minus-", "pin 0.439, class ZZ minus, did not go")]:
        type_reading(program, typed)
        program.shows("reads as " + said)
        program.key("Return")
        program.told("Recorded " + said)
    text = program.shows("prove 0.43")
    expect("prove 0.43780 to 0.43904 in" in text, "the bounds are %r" % text)
    expect("leave 0.43780 to 0.438 open" in text, "below: %r" % text)
    expect("leave 0.439 to 0.43904 open" in text, "above: %r" % text)
    program.find("list item", BORE + ", too close")
    program.picture("pins-06-left-open")


def withdraw_trial(program, book):
    """Ctrl+Z takes back what was recorded last, a pin trial; its row stays."""
    program.key("ctrl+z")
    program.window("Withdraw a pin trial")
    program.wait_focus("text box", "Reason")
    program.type("burr at the mouth")
    program.key("Return")
    program.window(PART)
    program.shows("no pin that did not go bounds it above")
    program.key("ctrl+l")
    program.window("Readings")
    program.shows("Withdrawn: burr at the mouth")
    program.picture("pins-07-readings")
    close_dialog(program, PART)
    expect(count_rows(book, "pin_trial") == 8, "a trial is gone from the book")


def main(binary, job):
    cases = Cases()
    spreads = []
    with Desktop() as desktop:
        book = desktop.path("shop.tmbook")
        program = cases.start(desktop, binary, "--book", book, os.path.abspath(job))
        steps = [
            ("the job opens at the bench", open_third, program),
            ("an inside caliper is shown unable to settle the band", read_caliper, program),
            ("a small-hole gauge joins it", tighten, program, spreads, SMALL_HOLE, ".4382", ".4383"),
            ("a telescoping gauge makes it closer", tighten, program, spreads, TELESCOPING, ".4384", ".4381"),
            ("class X pins close the band, one key each", close_with_class_x, program, book),
            ("class ZZ minus pins leave some of it open", leave_open_with_class_zz, program),
            ("a pin trial is withdrawn with its reason", withdraw_trial, program, book),
            ("Ctrl+Q ends the program", Program.quit, program),
        ]
        all(cases.run(*step) for step in steps)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
