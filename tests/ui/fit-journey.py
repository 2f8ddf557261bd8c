#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Fit and press in the real window, by keyboard alone: a measured bore, a mate that was measured, the wanted
range, the fit checked, the press force read off, the pairing kept; then what cannot be, each said in one
line.

  fit-journey.py PROGRAM JOBFILE

The job is invented (sample-jobs/pump-bearing-housing.tmjob).  TM_PICTURES=FOLDER keeps a picture of each
step.
"""

import os
import re
import sys

from desktop import Cases, Desktop, Program, expect
from names import check_names
from steps import ask_book, choose, close_dialog, go_to_step, open_bench

PART = "BH-2047"
# A figure that is none: never in a name, a label or an entry.
NO_FIGURE = re.compile(r"(?<![a-z])-?(nan|inf|infinity)(?![a-z])", re.IGNORECASE)


def sane(program):
    seen = program.look()
    for text in [one.name for one in seen.walk()] + seen.texts():
        expect(not NO_FIGURE.search(text or ""), "“%s” is said" % text)


def rows_of(program, name):
    return program.find("list", name).children


def open_fit(program):
    """F6 at a measured bore; its mate is known by limits alone."""
    program.window(PART)
    open_bench(program)
    program.find("button", "Fit and press")
    program.key("F6")
    program.wait_focus("text box", "Wanted clearance, least")
    program.shows("By limits, with a shaft 51.987")
    program.shows("Add a mate that was measured (Ctrl+I)")
    check_names(program, [("text box", "Wanted clearance, most"), ("text box", "Temperature of this piece"),
                          ("text box", "Temperature of the mate"), ("button", "Add a mate…"),
                          ("button", "Back to measuring")])
    sane(program)
    program.picture("fit-01-by-limits")


def add_mate(program, serial, smallest, largest, wrong=False):
    program.key("ctrl+i")
    program.window("Measured mate of feature 1")
    program.wait_focus("text box", "Serial or mark")
    program.put(serial)
    program.tab_to("text box", "Smallest size")
    program.put(smallest)
    program.tab_to("text box", "Largest size")
    if wrong:
        program.put("52.001")
        program.key("Return")
        program.shows("Largest size: it lies below the smallest")
        program.picture("fit-02-mate-refused")
    program.put(largest)
    program.tab_to("text box", "Expanded uncertainty, ± (k = 2)")
    program.put("0.002")
    program.key("Return")
    program.window(PART)
    program.find("list item", re.compile("^Mate " + serial + ": "))


def add_first_mate(program, book):
    add_mate(program, "R-1", "52.040", "52.041", wrong=True)
    program.shows("As measured, with mate R-1")
    expect(ask_book(book, "SELECT count(*) FROM mate") == [(1,)], "the mate is not in the book")
    sane(program)
    program.picture("fit-03-mate")


def refuse_wanted(program):
    """A range the wrong way round, and a word: each says one line, and stays typed."""
    program.tab_to("text box", "Wanted clearance, least", back=True)
    program.put("tight")
    program.key("Return")
    program.shows("“tight”")
    program.wait_text("tight")
    program.put("-0.010")
    program.tab_to("text box", "Wanted clearance, most")
    program.put("-0.035")
    program.key("Return")
    program.shows("The least clearance lies above the most")
    program.picture("fit-04-wanted-refused")


def want_range(program):
    program.tab_to("text box", "Wanted clearance, least", back=True)
    program.put("-0.035")
    program.tab_to("text box", "Wanted clearance, most")
    program.put("-0.010")
    program.key("Return")
    program.gone(None, re.compile("lies above the most"))
    program.shows("inside ")
    program.find("image", re.compile("wanted"))
    sane(program)
    program.picture("fit-05-wanted")


def refuse_temperature(program):
    program.tab_to("text box", "Temperature of this piece")
    program.put("-400")
    program.key("Return")
    program.shows("“-400” cannot be right; write °C from -273.15")
    program.picture("fit-06-temperature-refused")


def warm_up(program):
    program.put("80")
    program.key("Return")
    program.gone(None, re.compile("cannot be right"))
    # What the mate is made of is not stated yet.
    program.shows("With this piece at 80 °C and the mate at 20 °C")
    sane(program)


def press_facts(program):
    program.key("ctrl+3")
    program.wait_focus("text box", "Length of contact")
    program.shows("An estimate for planning")
    for name, text in [("Length of contact", "15"), ("Hub outside diameter", "80"),
                       ("Shaft inside diameter", "44"), ("Friction, least", "0.07"),
                       ("Friction, most", "0.14"), ("Bore roughness Rz", "6.3"),
                       ("Shaft roughness Rz", "3.2"), ("Room for dropping in", "0.05")]:
        program.tab_to("text box", name)
        program.put(text)
        program.key("Return")


def read_press(program, book):
    program.shows("its modulus must be above zero; name a material")
    program.picture("fit-07-no-material")
    choose(program, "Shaft material", "steel", back=True)
    check_names(program, [("list", "Figures of the press")])
    force = program.find("list item", re.compile("^Force to press in, at most: ")).name
    expect(re.match(r"^Force to press in, at most: least [0-9.]+ k?N, middle [0-9.]+ k?N, most [0-9.]+ k?N$",
                    force), force)
    program.shows("Holds at least")
    program.shows("To drop in with 0.0500 mm of room")
    for row in rows_of(program, "Figures of the press"):
        expect(re.match("^.+: least .+, middle .+, most .+$", row.name), "the row “%s”" % row.name)
    sane(program)
    program.picture("fit-08-press")


def refuse_thin_hub(program):
    """A hub that is thinner than its bore: one line, and the figures go."""
    program.tab_to("text box", "Hub outside diameter", back=True)
    program.put("50")
    program.key("Return")
    program.gone("list item", re.compile("^Pressure"))
    program.picture("fit-09-thin-hub")
    sane(program)
    program.put("-3")
    program.key("Return")
    program.shows("Hub outside diameter: “-3” cannot be right")
    program.wait_text("-3")
    program.picture("fit-10-hub-refused")
    program.put("80")
    program.key("Return")
    program.find("list item", re.compile("^Pressure"))


def pair(program, book):
    program.key("ctrl+1")
    program.wait_focus("text box", "Wanted clearance, least")
    add_mate(program, "R-2", "52.046", "52.047")
    add_mate(program, "R-3", "52.038", "52.039")
    program.key("ctrl+2")
    program.wait_focus("button", "Use this pairing")
    program.find("list item", re.compile("^Piece 001: "))
    sane(program)
    program.picture("fit-11-pairing")
    program.key("ctrl+Return")
    program.told("3 mates are now meant for their pieces")
    program.find("list item", re.compile("meant for it"))
    expect(ask_book(book, "SELECT count(*) FROM mate WHERE piece <> ''") == [(3,)],
           "the pairing is not in the book")
    program.picture("fit-12-paired")


def remove_mate(program):
    program.key("ctrl+1")
    program.wait_focus("text box", "Wanted clearance, least")
    program.tab_to("list item", re.compile("^Mate R-"))
    program.key("End")
    program.wait_focus("list item", re.compile("^Mate R-3"))
    program.key("Return")
    program.window("Measured mate of feature 1")
    close_dialog(program, PART)
    program.wait_focus("list item", re.compile("^Mate R-3"))
    program.key("Delete")
    program.gone("list item", re.compile("^Mate R-3"))


def go_back(program):
    """Escape goes back to measuring, and digits are a reading again."""
    program.key("Escape")
    program.wait_focus("text box", "Reading")
    program.gone("text box", "Wanted clearance, least")
    program.key("F6")
    program.wait_focus("text box", "Wanted clearance, least")
    program.wait_text("-0.035")
    program.key("F6")
    program.wait_focus("text box", "Reading")


def no_mate(program):
    """A feature without a mate says what to do next."""
    go_to_step(program, "2 · Ø30 H9", key="Next")
    program.key("F6")
    program.shows("No mate yet")
    program.find("button", "Give the mate’s limits…")
    sane(program)
    program.picture("fit-13-no-mate")
    program.key("ctrl+3")
    program.shows("No interference is known yet")
    sane(program)
    program.key("ctrl+2")
    program.shows("No mate with its uncertainty yet")
    program.key("Escape")
    program.wait_focus("text box", "Reading")


def main(binary, job):
    cases = Cases()
    with Desktop() as desktop:
        book = desktop.path("shop.tmbook")
        program = cases.start(desktop, binary, "--book", book, os.path.abspath(job))
        steps = [
            ("F6 shows the fit by limits", open_fit, program),
            ("a measured mate is refused, then kept", add_first_mate, program, book),
            ("a wanted range that cannot be stays typed", refuse_wanted, program),
            ("the fit is checked against what is wanted", want_range, program),
            ("a temperature below absolute zero is refused", refuse_temperature, program),
            ("the fit at another temperature", warm_up, program),
            ("what a press is known by", press_facts, program),
            ("the press force is read off", read_press, program, book),
            ("a hub thinner than its bore says one line", refuse_thin_hub, program),
            ("the pairing is kept by a key", pair, program, book),
            ("a mate is opened and removed by keys", remove_mate, program),
            ("Escape and F6 go back to measuring", go_back, program),
            ("a feature without a mate says what to do next", no_mate, program),
            ("Ctrl+Q ends the program", Program.quit, program),
        ]
        all(cases.run(*step) for step in steps)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
