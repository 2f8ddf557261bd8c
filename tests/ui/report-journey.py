#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The Report page of a sample job by keyboard alone: pages and zoom, what is missing and back, another
language, another paper, a PDF and a print in them.

  report-journey.py PROGRAM JOB

TM_PICTURES=FOLDER keeps a picture of each step.
"""

import os
import re
import shutil
import subprocess
import sys

from desktop import Cases, Desktop, Program, expect, wait_until
from steps import choose, close_dialog, open_job_page, open_report

PART = "BH-2047"
ENGLISH = "First-article report"
GERMAN = "Erstmusterprüfbericht"


def page(number, title=ENGLISH):
    return re.compile("^%s, page %s of " % (title, number))


def see_pages(program):
    program.window(PART)
    open_report(program)
    program.find("image", page(1))
    program.picture("report-01-pages")


def zoom(program):
    for key, factor in [("ctrl+0", "100 %"), ("ctrl+plus", "125 %"), ("ctrl+minus", "100 %")]:
        program.key(key)
        program.find("label", factor)
    program.key("ctrl+9")
    program.find("button", "Whole page")
    wait_until("a whole page", lambda: not program.find_all("label", "100 %"))
    program.picture("report-02-whole-page")
    program.key("ctrl+8")


def walk(program):
    program.key("ctrl+1")
    program.wait_focus("image", page(1))
    program.key("End")
    last = program.find("image", re.compile("^%s, page (\\d+) of \\1, " % ENGLISH))
    wait_until("the text of the last page", lambda: "Signatures" in program.find("image", last.name).description)
    program.key("Home")
    program.find("image", page(1))
    program.key("ctrl+g")
    program.wait_focus("text box", "Page")
    program.put("2")
    program.key("Return")
    program.find("image", page(2))
    program.wait_focus("image", page(2))


def take_fact_away(program):
    open_job_page(program)
    program.key("ctrl+r")
    program.window("Report facts")
    program.wait_focus("text box", re.compile("^Report identifier"))
    program.put("")
    program.key("Return")
    program.window(PART)


def jump(program):
    take_fact_away(program)
    open_report(program)
    program.wait_focus("list item", re.compile("identifier"))
    program.picture("report-03-missing")
    program.key("Return")
    program.window("Report facts")
    program.wait_focus("text box", re.compile("^Report identifier"))
    program.put("EX-FA-1181")
    program.key("Return")
    program.window(PART)
    open_report(program)
    program.find("image", page("\\d+"))
    program.gone("list item", re.compile("identifier"))


def change_language(program):
    program.key("ctrl+l")
    program.window("Form of the report")
    choose(program, "Language", "Deutsch")
    choose(program, "Size", "Letter")
    program.picture("report-05-form")
    close_dialog(program, PART)
    program.find("image", page("\\d+", GERMAN))
    program.picture("report-06-german")


def read_pdf(path):
    """Its text and the size of its pages."""
    if shutil.which("pdftotext") is None or shutil.which("pdfinfo") is None:
        return None
    text = subprocess.run(["pdftotext", "-layout", path, "-"], capture_output=True, text=True, check=True)
    info = subprocess.run(["pdfinfo", path], capture_output=True, text=True, check=True)
    return text.stdout + info.stdout


def check_pdf(path):
    text = read_pdf(path)
    if text is None:
        return
    for words in [GERMAN, "Merkmale", "52,0199", "612 x 792 pts"]:
        expect(words in text, "%s does not say %s" % (path, words))
    expect("Characteristics" not in text, "%s speaks English" % path)


def export(program, path):
    program.key("ctrl+d")
    program.window("Export the report as PDF")
    program.wait_focus("text box")
    program.put(path)
    program.key("Return")
    program.window(PART)
    wait_until("the PDF on the disk", lambda: os.path.exists(path))
    program.told(os.path.basename(path))
    check_pdf(path)


def find_pdfs(folder):
    return {os.path.join(at, name) for at, _, names in os.walk(folder) for name in names
            if name.endswith(".pdf")}


def is_whole(path):
    with open(path, "rb") as file:
        return file.read().rstrip().endswith(b"%%EOF")


def print_to_file(program, folder):
    """GTK's own dialog, with the printer that is there on every computer; it proposes a file."""
    before = find_pdfs(folder)
    program.key("ctrl+p")
    program.window("Print")
    program.find("label", "Print to File")
    program.key("Tab", "space")
    wait_until("the printer to be chosen", lambda: program.find("button", re.compile("Print$")).sensitive)
    program.picture("report-07-print")
    program.key("alt+p")
    program.window(PART)
    printed = wait_until("the printed file", lambda: find_pdfs(folder) - before).pop()
    wait_until("all of the printed file", lambda: is_whole(printed))
    check_pdf(printed)


def main(binary, job):
    cases = Cases()
    with Desktop() as desktop:
        program = cases.start(desktop, binary, "--book", desktop.path("shop.tmbook"), job)
        steps = [
            ("the report of the sample job shows its pages", see_pages, program),
            ("the pages grow and shrink", zoom, program),
            ("one walks through the pages", walk, program),
            ("what is missing leads to its place and back", jump, program),
            ("the report speaks German on Letter paper", change_language, program),
            ("the PDF speaks German on Letter paper", export, program, desktop.path("report.pdf")),
            ("the pages are printed to a file", print_to_file, program, desktop.folder),
            ("Ctrl+Q ends the program", Program.quit, program),
        ]
        all(cases.run(*step) for step in steps)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
