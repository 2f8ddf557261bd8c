#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""By keyboard alone: a bore is out, is reworked and measured again, the report is signed, the record changes, the
signature is superseded, and what was signed is handed out again byte for byte.

  sign-journey.py PROGRAM

TM_PICTURES=FOLDER keeps a picture of each step.
"""

import hashlib
import os
import re
import sys

from desktop import Cases, Desktop, Program, expect, wait_until
from steps import (add_person, begin_job, choose, close_dialog, count_rows, list_features, open_bench, open_job_page,
                   open_report, press, record)

PART = "SG-31"
PERSON = "MK Marta Kern"
IDENTIFIER = "FA-0031"
# Limits of 25 H7 (0/+21 µm) as ISO 286-2 has them.
CALLOUT = "Ø25 H7"
FIRST = "24.990"
AGAIN = "25.012"
LATER = "25.014"


def begin(program):
    begin_job(program, PART)
    list_features(program, CALLOUT)
    add_person(program, PERSON)


def reject(program):
    open_bench(program)
    record(program, FIRST)
    program.find("image", re.compile(r"24\.990 mm, out"))
    program.key("ctrl+shift+k")
    program.window("Nonconformance")
    program.wait_focus("text box", "Number of the nonconformance")
    program.type("NC-31")
    program.tab_to("text box", "What is wrong")
    program.type("bored under size")
    choose(program, "Decision", "rework")
    program.find("button", "Rework is done")


def rework(program):
    press(program, "button", "Rework is done")
    program.window(PART)
    program.gone("image", re.compile(r"24\.990 mm, out"))
    record(program, AGAIN)
    program.find("image", re.compile(r"25\.012 mm, in"))


def needs_identifier(program):
    """Without an identifier nothing can be signed, and the dialog says what mends it."""
    open_report(program)
    program.shows("Not signed")
    program.shows("The report is not signed: sign it.")
    program.key("ctrl+shift+s")
    program.window("Sign the report")
    program.shows("The report has no identifier")
    program.picture("sign-01-no-identifier")
    close_dialog(program, PART)
    open_job_page(program)
    program.key("ctrl+r")
    program.window("Report facts")
    program.tab_to("text box", re.compile("^Report identifier"))
    program.put(IDENTIFIER)
    program.key("Return")
    program.window(PART)


def sign(program):
    open_report(program)
    program.shows("Not signed")
    program.gone("list item", re.compile("identifier"))
    program.tab_to("list item", re.compile("part name is empty"))
    program.key("End")
    program.wait_focus("list item", re.compile("^The report is not signed"))
    program.key("Return")
    program.window("Sign the report")
    program.shows(IDENTIFIER)
    program.find("label", "What is missing")
    program.picture("sign-02-dialog")
    press(program, "checkbox", re.compile("^Sign although"))
    program.picture("sign-03-although")
    press(program, "button", "Sign", back=True)
    program.window(PART)
    program.told("Signed: report %s, by Marta Kern" % IDENTIFIER)
    program.find("list item", re.compile("^Measured by, Marta Kern, .*Holds: the record is as it was signed"))
    program.gone("label", "The report is not signed: sign it.")
    program.picture("sign-04-signed")


def hand_out(program, path, state):
    """Saves the signed pages and returns their SHA-256 and the one that the dialog names."""
    open_report(program)
    program.find("list item", re.compile("^Measured by, Marta Kern, .*" + state))
    program.tab_to("list item", re.compile("^Measured by"))
    program.key("Return")
    program.window("Signed report")
    program.shows(state)
    row = program.find("list item", re.compile(r"^Pages \(PDF\): SHA-256 ")).name
    pages = re.search("[0-9a-f]{64}", row).group()
    program.picture("sign-05-%s" % state.split(":")[0].lower())
    press(program, "button", "Save the signed pages")
    program.window("Save the signed pages")
    program.wait_focus("text box")
    program.put(path)
    program.key("Return")
    wait_until("the pages on the disk", lambda: os.path.exists(path))
    program.window("Signed report")
    close_dialog(program, PART)
    program.wait_focus("list item", re.compile("^Measured by"))
    with open(path, "rb") as file:
        return hashlib.sha256(file.read()).hexdigest(), pages


def change(program):
    """A later reading: the report that was signed no longer says what the record says."""
    open_bench(program)
    record(program, LATER)
    open_report(program)
    program.shows("Superseded")
    program.shows("The record has changed since MK signed the report")
    program.picture("sign-06-superseded")


def same_bytes(program, first, book):
    found, named = hand_out(program, program.desktop.path("second.pdf"), "Superseded: the record has changed since")
    expect(found == named, "the file's SHA-256 is not the one that is shown")
    expect((found, named) == first, "what is handed out again is not what was signed")
    kept = count_rows(book, "content", "digest = '%s'" % found)
    signatures = count_rows(book, "signature")
    expect((kept, signatures) == (1, 1), "the book keeps %d files and %d signatures" % (kept, signatures))


def main(binary):
    cases = Cases()
    with Desktop() as desktop:
        book = desktop.path("shop.tmbook")
        first = []
        program = cases.start(desktop, binary, "--book", book)

        def hand_out_first():
            first.extend(hand_out(program, desktop.path("first.pdf"), "Holds: the record is as it was signed"))
            expect(first[0] == first[1], "the file's SHA-256 is not the one that is shown")

        steps = [
            ("a job with one bore is begun", begin, program),
            ("the bore is out, and a nonconformance decides on rework", reject, program),
            ("reworked and measured again, it is in", rework, program),
            ("a report without identifier is not signed", needs_identifier, program),
            ("the report is signed, although something is missing", sign, program),
            ("the signed pages are handed out", hand_out_first),
            ("the record changes: superseded", change, program),
            ("the same bytes are handed out again",
             lambda: same_bytes(program, tuple(first), book)),
            ("Ctrl+Q ends the program", Program.quit, program),
        ]
        all(cases.run(*step) for step in steps)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
