#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Methods, suitability and shop rules by keyboard alone; every row of theirs is one sentence.

  methods-journey.py PROGRAM JOBFILE
"""

import os
import re
import sys

from desktop import Cases, Desktop, Program, expect, wait_until
from names import check_names
from steps import close_dialog, walk_to

PART = "BH-2047"
LINE = re.compile("^.+: ±?[0-9].*, (normal|t|rectangular|triangular|u-shaped), .* standard, .* of the whole")
OTHER = re.compile("^(Together: Combined|.+: .*(not stated|left out|stands in|has none|the repeatability))")


def rows_of(program, name):
    return program.find("list", name).children


def see_methods(program):
    program.key("alt+4")
    program.find("tree grid", "Gauges")
    program.key("ctrl+2")
    program.wait_focus("list item", re.compile("expanded uncertainty ±"))
    check_names(program, [("list", "Methods"), ("list", "Uncertainty budget"),
                          ("button", re.compile("^Feature: 1 · "))])


def read_budget(program):
    """Each row of the budget is reached by Tab and arrows, and says all of itself."""
    lines = 0
    program.tab_to("list item", LINE)
    for row in rows_of(program, "Uncertainty budget"):
        expect(LINE.match(row.name) or OTHER.match(row.name), "the row “%s”" % row.name)
        lines += 1 if LINE.match(row.name) else 0
        program.wait_focus("list item", row.name)
        program.key("Down")
    expect(lines >= 2, "%d lines in the budget" % lines)


def choose_method(program):
    before = program.find("list item", re.compile("^Together")).name
    program.tab_to("list item", re.compile("expanded uncertainty"), back=True)
    program.key("Down")
    wait_until("the budget of another method",
               lambda: program.find("list item", re.compile("^Together")).name != before)
    program.key("Up")
    wait_until("the first budget again",
               lambda: program.find("list item", re.compile("^Together")).name == before)


def add_line(program):
    program.tab_to("button", "Add a line…")
    program.key("ctrl+l")
    program.window("Budget line of")
    check_names(program, [("text box", "Name"), ("text box", "Value"),
                          ("combo box", re.compile("^Distribution: "))])
    program.wait_focus("text box", "Name")
    program.put("chuck jaws")
    program.tab_to("text box", "Value")
    program.put("-0.002")
    program.key("Return")
    program.shows("Value cannot be below zero.")
    program.put("0.002")
    program.key("Return")
    program.window(PART)
    program.find("list item", re.compile("^Chuck jaws: ±2 µm, rectangular, 1.2 µm standard, "))


def change_line(program):
    program.tab_to("list item", LINE)
    walk_to(program, "Down", lambda: program.wait_focus("list item").name,
            lambda at: at.startswith("Chuck jaws"), steps=12)
    program.key("Return")
    program.window("Budget line of")
    program.tab_to("button", "Remove", back=True)
    program.key("Return")
    program.window(PART)
    program.gone("list item", re.compile("^Chuck jaws"))


def add_method(program):
    program.key("ctrl+i")
    program.window("New method")
    check_names(program, [("text box", "Name"), ("combo box", re.compile("^Gauge, or transfer gauge: ")),
                          ("button", "From readings…")])
    program.key("Return")
    program.shows("Name: it needs one.")
    close_dialog(program, PART)


def see_suitability(program):
    program.key("ctrl+3")
    program.wait_focus("list item", re.compile("^1 · .*settles it"))
    check_names(program, [("list", "Features"), ("list", "How each method settles it")])
    for row in rows_of(program, "How each method settles it"):
        expect(re.match("^.+: (settles|cannot|not|does not).*", row.name), "the row “%s”" % row.name)


def assign(program):
    program.tab_to("list item", re.compile("^Dial bore gauge on 52 ring, assigned: settles it"))
    program.key("Down")
    other = program.wait_focus("list item", re.compile("^(?!Dial bore gauge on 52 ring, )")).name.split(":")[0]
    program.key("Return")
    program.find("list item", re.compile("^1 · .* · " + re.escape(other) + "$"))
    program.find("list item", re.compile("^" + re.escape(other) + ", assigned"))


def refuse_rule(program):
    program.key("ctrl+8")
    program.wait_focus("text box", "Part, ± °C about 20 °C")
    check_names(program, [("text box", "A check holds for, hours")])
    program.put("-3")
    program.key("Return")
    program.shows("“-3” cannot be right; write °C between 0 and 60")


def keep_rule(program):
    program.put("3")
    program.key("Return")
    program.gone(None, re.compile("cannot be right"))
    program.key("ctrl+2")
    program.find("list item", re.compile("^Temperature of the part: ±"))


def main(binary, job):
    cases = Cases()
    with Desktop() as desktop:
        program = cases.start(desktop, binary, "--book", desktop.path("shop.tmbook"), os.path.abspath(job))
        program.window(PART)
        steps = [
            ("the Methods view", see_methods),
            ("every line of a budget is a sentence", read_budget),
            ("another method by the arrow keys", choose_method),
            ("a line of one's own, refused and then kept", add_line),
            ("the line taken away again", change_line),
            ("a method without a name is refused", add_method),
            ("the Suitability view", see_suitability),
            ("Enter assigns a method", assign),
            ("a rule that cannot be right", refuse_rule),
            ("a rule is kept and joins the budget", keep_rule),
            ("it ends", Program.quit),
        ]
        all(cases.run(title, check, program) for title, check in steps)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
