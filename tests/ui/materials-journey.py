#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The Materials view by keyboard alone: found, read, made one's own, refused, changed, taken away.

  materials-journey.py PROGRAM JOBFILE
"""

import os
import re
import sys

from desktop import Cases, Desktop, Program, expect
from names import check_names

PART = "BH-2047"
FIGURE = re.compile("^(Modulus of elasticity|Poisson’s ratio|Yield strength|Expansion .*): .+")


def see_materials(program):
    program.key("alt+4")
    program.find("tree grid", "Gauges")
    program.key("ctrl+7")
    program.wait_focus("list item", re.compile("A (metal|plastic) of the tables"))
    check_names(program, [("list", "Materials"), ("list", "Figures of the material"),
                          ("button", "Make it your own…")])


def find_one(program):
    """What a person calls it finds what the tables call it; Enter goes there."""
    program.key("ctrl+f")
    program.wait_focus("search box")
    program.put("POM")
    program.key("Return")
    program.wait_focus("list item", re.compile("^acetal: A plastic of the tables, 2.95 GPa$"))
    program.shows("Plastic relaxes")


def read_figures(program):
    figures = program.find("list", "Figures of the material").children
    program.tab_to("list item", FIGURE)
    for row in figures:
        program.wait_focus("list item", row.name)
        program.key("Down")
    expect(sum(1 for row in figures if FIGURE.match(row.name)) == 5, "five figures, each one sentence")


def make_own(program):
    program.tab_to("list item", re.compile("^acetal: "), back=True)
    program.key("Return")
    program.window("New material")
    check_names(program, [("text box", "Name"), ("combo box", re.compile("^Kind of material: plastic"))])
    program.wait_focus("text box", "Yield strength, MPa")
    program.put("66")
    program.key("Return")
    program.shows("Source of the figures: it needs one.")
    program.wait_focus("text box", "Source of the figures")
    program.put("supplier sheet")
    program.tab_to("text box", "Modulus of elasticity, GPa", back=True)
    program.put("-3")
    program.key("Return")
    program.shows("cannot be below zero")
    program.put("3.0")
    program.key("Return")
    program.window(PART)
    program.find("list item", "acetal: The shop’s own, 3 GPa")
    program.find("list item", "Modulus of elasticity: 3 GPa, in the tables 2.8 to 3.1, supplier sheet")


def take_away(program):
    program.key("ctrl+f")
    program.wait_focus("search box")
    program.put("acetal")
    program.key("Return")
    program.wait_focus("list item", re.compile("^acetal: The shop’s own"))
    program.key("Return")
    program.window("Material acetal")
    program.tab_to("button", "Remove", back=True)
    program.key("Return")
    program.window(PART)
    program.gone("list item", re.compile("^acetal: The shop’s own"))


def main(binary, job):
    cases = Cases()
    with Desktop() as desktop:
        program = cases.start(desktop, binary, "--book", desktop.path("shop.tmbook"), os.path.abspath(job))
        program.window(PART)
        steps = [
            ("the Materials view", see_materials),
            ("one is found as a person calls it", find_one),
            ("every figure is a sentence", read_figures),
            ("an entry of the shop's own, refused and then kept", make_own),
            ("the entry taken away again", take_away),
            ("it ends", Program.quit),
        ]
        all(cases.run(title, check, program) for title, check in steps)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
