#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Everything on the pages that a person reads or works with has a name in the accessibility tree.

  names.py PROGRAM JOBFILE
"""

import os
import re
import sys

from desktop import Cases, Desktop, Program, expect
from steps import close_dialog, open_bench, open_template, press

PART = "BH-2047"
NAMED = {
    "text box", "search box", "spin button", "list", "list box", "list item", "tree grid", "table", "grid",
    "row", "button", "toggle button", "check box", "radio", "switch", "combo box", "image", "link",
    "menu item",
}
# GTK 4.8 gives what has no name the name of its type.
TYPE = re.compile("^((Gtk|Adw|Tm)[A-Z]|$)")
# What a table's head is made of: its labels are read.
HEAD = "column header"


def find_unnamed(program):
    found = []
    for one in program.look().walk():
        of_head = one.role == "row" and any(child.role == HEAD for child in one.children)
        if one.role in NAMED and TYPE.match(one.name) and not of_head:
            found.append(one.describe())
    return found


def expect_named(program):
    unnamed = find_unnamed(program)
    expect(not unnamed, "without a name: " + "; ".join(unnamed))


def check_names(program, wanted):
    """No unnamed thing, and each of `wanted` there: [(role, name)]."""
    for role, name in wanted:
        program.find(role, name)
    expect_named(program)


def check_home(program):
    check_names(program, [("text box", "Part number"), ("text box", "First requirement"),
                          ("text box", "First piece"), ("button", "Main menu")])


def check_template(program):
    """The report template, from the main menu, with a field and a statement."""
    open_template(program)
    press(program, "button", "Add a field")
    program.wait_focus("text box", "Name of the field")
    press(program, "button", "Add a statement")
    program.wait_focus("text box", "Text")
    check_names(program, [("text box", "Name of the shop"), ("text box", "Address, telephone"),
                          ("button", "Choose a colour"), ("image", re.compile("^The first page"))])
    close_dialog(program, "Tenthmark")


def check_new_job(program):
    program.key("ctrl+n")
    program.window("New job")
    check_names(program, [("combo box", "Unit of the drawing")])
    close_dialog(program, "Tenthmark")


def check_bench(program):
    open_bench(program)
    check_names(program, [("text box", "Reading"), ("list", "Features"),
                          ("image", re.compile("limits .* to ")), ("combo box", "Piece")])


def check_pins(program):
    """F2 tries pins; the bar under the entry says from which set."""
    program.find(None, "Pin trial…")
    program.key("F2")
    program.wait_focus("text box", "Pin trial")
    check_names(program, [("button", "Went"), ("button", "Did not go"), ("combo box", "Pin set")])
    program.key("F2")
    program.wait_focus("text box", "Reading")


def check_temperatures(program):
    program.key("F3")
    program.wait_focus("text box", "Temperature of the part")
    check_names(program, [("text box", "Temperature of the gauge"), ("button", "Use from now on"),
                          ("button", "Not taken")])
    program.type("22.5")
    program.key("Return")
    program.wait_focus("text box", "Temperature of the gauge")
    program.type("20.5")
    program.key("Return")
    program.find("button", "Temperatures: part 22.5, gauge 20.5 °C")
    program.wait_focus("text box", "Reading")
    check_names(program, [])


def check_readings(program):
    program.key("ctrl+l")
    program.window("Readings")
    check_names(program, [("list", "Readings")])
    close_dialog(program, PART)


def check_nonconformance(program):
    program.key("ctrl+shift+k")
    program.window("Nonconformance")
    check_names(program, [("text box", re.compile("."))])
    close_dialog(program, PART)


def check_job(program):
    program.key("alt+1")
    check_names(program, [("tree grid", "Features"), ("tree grid", "Pieces"), ("text box", "Requirement"),
                          ("text box", "Customer"), ("text box", "Serial of the next piece")])


def check_report_facts(program):
    """The dialogs for what a report says besides its features, by their keys."""
    program.find("list item", re.compile("^Report facts…: "))
    program.key("ctrl+r")
    program.window("Report facts")
    check_names(program, [("text box", re.compile("^Report identifier")),
                          ("combo box", re.compile("^Language"))])
    close_dialog(program, PART)
    program.key("ctrl+m")
    program.window("Materials, processes, tests")
    check_names(program, [("button", "Add…")])
    program.key("Return")
    program.window("New material, process or test")
    check_names(program, [("text box", "Name"), ("combo box", re.compile("^Kind"))])
    program.tab_to("text box", "Name")
    program.type("EN-GJL-250")
    program.key("Return")
    program.window("Materials, processes, tests")
    program.find("list item", "EN-GJL-250, Raw material · no certificate")
    check_names(program, [])
    close_dialog(program, PART)
    program.find("list item", "Materials, processes, tests…: 2 listed, 1 without a certificate")


def check_batch(program):
    """The grid, the pictures and the buttons of the Batch page."""
    program.key("alt+3")
    program.wait_focus("image", re.compile("^Piece "))
    check_names(program, [("image", re.compile(" by piece")), ("button", "Worst first"),
                          ("button", "Histogram"), ("button", "Hold back…")])


def check_gauges(program):
    program.key("alt+4")
    check_names(program, [("tree grid", "Gauges"), ("text box", "Standard’s size"),
                          ("button", "Add a calibration…")])
    program.key("ctrl+i")
    program.window("Add a gauge")
    check_names(program, [("text box", "Tag"), ("text box", "Resolution: the smallest step it shows")])
    close_dialog(program, PART)
    program.key("ctrl+k")
    program.window("Calibration of")
    check_names(program, [("text box", "Calibrated on"), ("text box", "Expanded uncertainty, ±")])
    close_dialog(program, PART)
    program.key("alt+l")
    program.window("Recall of")
    check_names(program, [("text box", re.compile("^Last known good")), ("button", "List")])
    close_dialog(program, PART)
    program.key("alt+t")
    program.window("Take gauges")
    check_names(program, [("button", "Take")])
    close_dialog(program, PART)
    program.key("alt+1")
    program.find("tree grid", "Pieces")


def check_table(program):
    program.key("ctrl+t")
    program.find(None, "Rows of the table")
    check_names(program, [("tree grid", "What the rows are understood as")])
    close_dialog(program, PART)


def check_report(program):
    program.key("alt+5")
    check_names(program, [("image", re.compile("^First-article report, page 1 of")), ("text box", "Page"),
                          ("combo box", "Section"), ("button", "Larger"), ("button", "Print…"),
                          ("button", "Export")])
    program.key("ctrl+l")
    program.window("Form of the report")
    check_names(program, [("combo box", re.compile("^Language")), ("combo box", re.compile("^Size"))])
    close_dialog(program, PART)
    program.key("ctrl+2")
    check_names(program, [("tree grid", "Characteristics")])
    program.key("ctrl+shift+s")
    program.window("Sign the report")
    check_names(program, [("combo box", re.compile("^Signed by")), ("combo box", re.compile("^Role"))])
    press(program, "checkbox", re.compile("^Sign although"))
    press(program, "button", "Sign")
    program.window(PART)
    program.tab_to("list item", re.compile("^Measured by"))
    program.key("Return")
    program.window("Signed report")
    check_names(program, [("button", "Open the signed pages"), ("button", "Save the signed workbook")])
    close_dialog(program, PART)


def check_list(program):
    program.key("alt+Left")
    check_names(program, [("tree grid", "Jobs"), ("search box", "Search the jobs")])


def main(binary, job):
    cases = Cases()
    with Desktop() as desktop:
        program = cases.start(desktop, binary, "--book", desktop.path("empty.tmbook"))
        empty = [
            ("Home, with an empty book", check_home),
            ("New job", check_new_job),
            ("Report template", check_template),
            ("it ends", Program.quit),
        ]
        if all(cases.run(title, check, program) for title, check in empty):
            book = desktop.path("shop.tmbook")
            program = cases.start(desktop, binary, "--book", book, os.path.abspath(job))
            program.window(PART)
            pages = [
                ("Bench", check_bench),
                ("Pins", check_pins),
                ("Temperatures", check_temperatures),
                ("Readings", check_readings),
                ("Nonconformance", check_nonconformance),
                ("Job", check_job),
                ("Facts of the report", check_report_facts),
                ("The batch", check_batch),
                ("Gauges and methods", check_gauges),
                ("Add a table", check_table),
                ("Report", check_report),
                ("Home, with a job", check_list),
                ("it ends again", Program.quit),
            ]
            all(cases.run(title, check, program) for title, check in pages)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
