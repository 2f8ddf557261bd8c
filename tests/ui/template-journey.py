#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""By keyboard alone: the shop's report template is made, what it requires of a job is missing until the job answers
it, and a template that was taken away is gone and still in the book.

  template-journey.py PROGRAM

TM_PICTURES=FOLDER keeps a picture of each step.
"""

import re
import sys

from desktop import Cases, Desktop, Program, expect, wait_until
from steps import ask_book, begin_job, open_report, open_template, press

PART = "TP-1"
SHOP = "Example Precision"
MISSING = "The shop's field “Heat number” is empty"


def make_template(program):
    """On Home, before there is any job."""
    open_template(program)
    program.tab_to("text box", "Name of the shop")
    program.put(SHOP)
    program.tab_to("text box", "Address, telephone")
    program.type("1 Mill Lane")
    program.key("Return")
    program.type("Exampletown")
    program.tab_to("text box", re.compile("^Colour, like"))
    program.put("red")
    press(program, "button", "Save", back=True)
    program.shows("Colour: “red” is none")
    program.wait_focus("text box", re.compile("^Colour, like"))
    program.put("#1a5f7a")
    program.shows("Contrast with white paper 7.0 to 1: heads and lines")
    program.tab_to("text box", re.compile("^Ground, like"))
    program.put("#2a4d2a")
    program.shows("The heads of tables are printed white on it")
    program.picture("template-00-ground")
    press(program, "checkbox", "Class")
    press(program, "button", "Add a field")
    program.wait_focus("text box", "Name of the field")
    program.type("Heat number")
    press(program, "checkbox", "required")
    press(program, "button", "Add a statement")
    program.wait_focus("text box", "Text")
    program.type("We made it.")
    wait_until("the page to say who made it",
               lambda: SHOP in program.find("image", "The first page of a report by this template").description)
    program.picture("template-01-typed")
    press(program, "button", "Save", back=True)
    program.window("Tenthmark")
    program.told("Report template recorded")


def answer(program):
    """The row of what is missing leads to the field."""
    open_report(program)
    program.tab_to("list item", re.compile(re.escape(MISSING)))
    program.picture("template-02-missing")
    program.key("Return")
    program.window("Report facts")
    program.wait_focus("text box", "Heat number (required)")
    program.type("H-77")
    program.key("Return")
    program.window(PART)
    open_report(program)
    program.gone(None, re.compile(re.escape(MISSING)))


def take_away(program):
    """From the form of the report this time."""
    open_report(program)
    program.key("ctrl+l")
    program.window("Form of the report")
    program.tab_to("button", "Report template…")
    program.picture("template-03-form")
    program.key("space")
    program.window("Report template")
    program.tab_to("text box", "Name of the shop")
    program.wait_text(SHOP)
    press(program, "button", "Remove", back=True)
    program.window(PART)
    program.told("Report template taken away")


def take_again(program):
    """The version before that which took it away, looked at and saved once more."""
    open_template(program)
    press(program, "button", "Earlier versions…")
    program.window("Versions of the report template")
    program.wait_focus("list item", re.compile(", " + SHOP + "$"))
    wait_until("the page to say who made it",
               lambda: SHOP in program.find("image", "The first page of a report by this template").description)
    program.picture("template-04-versions")
    program.key("Up")
    program.wait_focus("list item", re.compile(", taken away$"))
    program.key("Down")
    program.wait_focus("list item", re.compile(", " + SHOP + "$"))
    program.key("Return")
    program.window("Report template")
    program.tab_to("text box", "Name of the shop")
    program.wait_text(SHOP)
    program.picture("template-05-taken-again")
    press(program, "button", "Save", back=True)
    program.window(PART)
    program.told("Report template recorded")


def look_into(book):
    """Every version is there, and what they said."""
    versions = ask_book(book, "SELECT name, address, accent, ground, hidden FROM template ORDER BY seq")
    fields = ask_book(book, "SELECT name, required FROM template_field")
    answers = ask_book(book, "SELECT name, value FROM current_report_field")
    first = (SHOP, "1 Mill Lane\nExampletown", "#1a5f7a", "#2a4d2a", "class")
    expect(versions == [first, ("",) * 5, first],
           "the book has the versions %r" % versions)
    expect(fields == [("Heat number", 1)] * 2, "the book has the fields %r" % fields)
    expect(answers == [("Heat number", "H-77")], "the job answers %r" % answers)


def main(binary):
    cases = Cases()
    with Desktop() as desktop:
        book = desktop.path("shop.tmbook")
        program = cases.start(desktop, binary, "--book", book)
        steps = [
            ("the template is made, and a colour that is none is refused", make_template, program),
            ("a job is begun", begin_job, program, PART),
            ("what the template requires is missing until it is answered", answer, program),
            ("the template is taken away", take_away, program),
            ("an earlier version is taken again", take_again, program),
            ("the book has every version", look_into, book),
            ("Ctrl+Q ends the program", Program.quit, program),
        ]
        all(cases.run(*step) for step in steps)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
