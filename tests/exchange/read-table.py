#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""read-table.py FILE: reads the table of a job with Python's own csv module, and prints what was recorded, one
line for each reading, pin trial and cut: its kind, number, value and unit, between tabs.

Fails where a row has another number of cells than the head, or where a cell that is no plain number begins with
what a spreadsheet takes for a formula.
"""

import csv
import re
import sys

NUMBER = re.compile(r"[+-]?(\d+\.?\d*|\.\d+)\Z")

with open(sys.argv[1], encoding="utf-8-sig", newline="") as file:
    rows = list(csv.reader(file, strict=True))
head = rows[0]
for row in rows[1:]:
    if len(row) != len(head):
        sys.exit(f"{len(row)} cells, {len(head)} in the head: {row}")
    for cell in row:
        if cell[:1] in tuple("=+-@\t\r\n＝＋－＠") and cell != "" and not NUMBER.match(cell):
            sys.exit(f"a formula: {cell!r}")
    named = dict(zip(head, row))
    if named["Row"] in ("reading", "pin trial", "cut"):
        print(named["Row"], named["Number in the record"], named["Value"], named["Unit of the value"], sep="\t")
