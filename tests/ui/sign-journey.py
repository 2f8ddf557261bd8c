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
import sqlite3
import sys

from desktop import Cases, Desktop, Program, expect, wait_until

PART = "SG-31"
PERSON = "MK Marta Kern"
IDENTIFIER = "FA-0031"
# Limits of 25 H7 (0/+21 µm) as ISO 286-2 has them.
CALLOUT = "Ø25 H7"
FIRST = "24.990"
AGAIN = "25.012"
LATER = "25.014"


def begin(program):
    program.key("ctrl+n")
    program.window("New job")
    program.wait_focus("text box", "Part number")
    program.type(PART)
    program.tab_to("text box", "First piece")
    program.key("Return")
    program.window(PART)
    program.tab_to("text box", "Requirement")
    program.put(CALLOUT)
    program.key("Return")
    program.find("row", "1 · " + CALLOUT)
    program.tab_to("text box", "Add: initials and name, then Enter")
    program.put(PERSON)
    program.key("Return")
    program.find(None, re.compile("Marta Kern"))


def read(program, text):
    program.wait_focus("text box", "Reading")
    wait_until("an empty entry", lambda: program.focused().text == "")
    program.type(text)
    program.key("Return")
    program.shows("Recorded %s mm" % text)


def reject(program):
    program.key("alt+2")
    read(program, FIRST)
    program.find("image", re.compile(r"24\.990 mm, out"))
    program.key("ctrl+shift+k")
    program.window("Nonconformance")
    program.wait_focus("text box", "Number of the nonconformance")
    program.type("NC-31")
    program.tab_to("text box", "What is wrong")
    program.type("bored under size")
    program.tab_to("combo box", re.compile("^Decision"))
    program.key("space")
    program.key("Down")
    program.key("Down")
    program.key("Return")
    program.find("button", "Rework is done")


def rework(program):
    program.tab_to("button", "Rework is done")
    program.key("space")
    program.window(PART)
    program.gone("image", re.compile(r"24\.990 mm, out"))
    read(program, AGAIN)
    program.find("image", re.compile(r"25\.012 mm, in"))


def needs_identifier(program):
    """Without an identifier nothing can be signed, and the dialog says what mends it."""
    program.key("alt+5")
    program.shows("Not signed")
    program.find("list", "What is missing")
    program.shows("The report is not signed: sign it.")
    program.key("ctrl+shift+s")
    program.window("Sign the report")
    program.shows("The report has no identifier")
    program.picture("sign-01-no-identifier")
    program.key("Escape")
    program.window(PART)
    program.key("alt+1")
    program.key("ctrl+r")
    program.window("Report facts")
    program.tab_to("text box", re.compile("^Report identifier"))
    program.type(IDENTIFIER)
    program.key("Return")
    program.window(PART)


def sign(program):
    program.key("alt+5")
    program.shows("Not signed")
    program.tab_to("list item", re.compile("part name is empty"))
    program.key("End")
    program.wait_focus("list item", re.compile("^The report is not signed"))
    program.key("Return")
    program.window("Sign the report")
    program.shows(IDENTIFIER)
    program.find("label", "What is missing")
    program.picture("sign-02-dialog")
    program.tab_to("checkbox", re.compile("^Sign although"))
    program.key("space")
    program.picture("sign-03-although")
    program.tab_to("button", "Sign", back=True)
    program.key("space")
    program.window(PART)
    program.shows("Signed: report %s, by Marta Kern" % IDENTIFIER)
    program.find("list item", re.compile("^Measured by, Marta Kern, .*Holds: the record is as it was signed"))
    program.gone("label", "The report is not signed: sign it.")
    program.picture("sign-04-signed")


def hand_out(program, path, state):
    """Saves the signed pages and returns their SHA-256 and the one that the dialog names."""
    program.key("alt+5")
    program.find("list item", re.compile("^Measured by, Marta Kern, .*" + state))
    program.tab_to("list item", re.compile("^Measured by"))
    program.key("Return")
    program.window("Signed report")
    program.shows(state)
    row = program.find("list item", re.compile(r"^Pages \(PDF\): SHA-256 ")).name
    pages = re.search("[0-9a-f]{64}", row).group()
    program.picture("sign-05-%s" % state.split(":")[0].lower())
    program.tab_to("button", "Save the signed pages")
    program.key("space")
    program.window("Save the signed pages")
    program.put(path)
    program.key("Return")
    wait_until("the pages on the disk", lambda: os.path.exists(path))
    program.window("Signed report")
    program.key("Escape")
    # Between two windows neither has the keyboard, and a key would go nowhere.
    wait_until("the job's window to have the keyboard", lambda: program.window(PART).active)
    program.wait_focus("list item", re.compile("^Measured by"))
    with open(path, "rb") as file:
        return hashlib.sha256(file.read()).hexdigest(), pages


def change(program):
    """A later reading: the report that was signed no longer says what the record says."""
    program.key("alt+2")
    read(program, LATER)
    program.key("alt+5")
    program.shows("Superseded")
    program.shows("The record has changed since MK signed the report")
    program.picture("sign-06-superseded")


def same_bytes(program, first, book):
    found, named = hand_out(program, program.desktop.path("second.pdf"), "Superseded: the record has changed since")
    expect(found == named, "the file's SHA-256 is not the one that is shown")
    expect((found, named) == first, "what is handed out again is not what was signed")
    with sqlite3.connect("file:%s?mode=ro" % book, uri=True) as database:
        kept = database.execute("SELECT count(*) FROM content WHERE digest = ?", [found]).fetchone()[0]
        signatures = database.execute("SELECT count(*) FROM signature").fetchone()[0]
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
