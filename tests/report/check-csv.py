#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
#
# check-csv.py CLI JOB...: opens the table (CSV) of each job in the spreadsheet programs that are installed, told to
# evaluate whatever looks like a formula: none does.  A table with a formula shows that they would.  Prints TAP;
# skips where a program, or openpyxl, which reads what they save, is not installed.

import csv
import os
import shutil
import subprocess
import sys
import tempfile
import warnings

try:
    import openpyxl
except ImportError:
    openpyxl = None

# What openpyxl misses in the files of others is not about ours.
warnings.simplefilter("ignore")

# Comma, quote, UTF-8, from the first line, …, evaluate formulas.
FILTER = "CSV:44,34,76,1,,0,false,true,false,false,false,0,true"


def open_in_office(program, path, folder):
    subprocess.run(
        [program, "--headless", "-env:UserInstallation=file://" + folder + "/profile", "--infilter=" + FILTER,
         "--convert-to", "xlsx", "--outdir", folder, path],
        check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=300)


def open_in_sheets(program, path, folder):
    target = os.path.join(folder, os.path.basename(path)[:-4] + ".xlsx")
    subprocess.run([program, "--import-type=Gnumeric_stf:stf_csvtab", path, target],
                   check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=300)


def list_formulas(path):
    sheet = openpyxl.load_workbook(path).active
    return ["%s: %s" % (cell.coordinate, cell.value) for row in sheet.iter_rows() for cell in row
            if cell.data_type == "f"]


def count_kept(table, path):
    """How many cells of the table begin like a formula behind an apostrophe; and how many of them are texts."""
    with open(table, encoding="utf-8-sig", newline="") as file:
        rows = list(csv.reader(file))
    sheet = openpyxl.load_workbook(path).active
    kept = same = 0
    for number, row in enumerate(rows, 1):
        for column, text in enumerate(row, 1):
            if text[:1] == "'" and text[1:2] in ("=", "+", "-", "@"):
                kept += 1
                same += str(sheet.cell(number, column).value).lstrip("'") == text[1:]
    return kept, same


def check(program, run, table, folder):
    run(program, table, folder)
    opened = os.path.join(folder, os.path.basename(table)[:-4] + ".xlsx")
    found = list_formulas(opened)
    kept, same = count_kept(table, opened)
    if kept == 0:
        found.append("nothing in the table looks like a formula: this proves nothing")
    if same != kept:
        found.append("%d of %d texts are not as they were" % (kept - same, kept))
    return found


def main():
    cli, jobs = sys.argv[1], sys.argv[2:]
    programs = [(shutil.which("soffice"), open_in_office), (shutil.which("ssconvert"), open_in_sheets)]
    programs = [(path, run) for path, run in programs if path is not None]
    if openpyxl is None or not programs:
        print("1..0 # SKIP no spreadsheet program, or no openpyxl")
        return 0
    number, bad = 0, False
    with tempfile.TemporaryDirectory() as folder:
        control = os.path.join(folder, "control.csv")
        with open(control, "w", encoding="utf-8") as file:
            file.write("a,b\n1,=1+1\n")
        for path, run in programs:
            run(path, control, folder)
            found = [] if list_formulas(os.path.join(folder, "control.xlsx")) else ["no formula was evaluated"]
            for job in [None] + jobs:
                if job is not None:
                    table = os.path.join(folder, os.path.basename(job)[:-len(".tmjob")] + ".csv")
                    subprocess.run([cli, "report", job, "--out", table], check=True, stdout=subprocess.DEVNULL)
                    found = check(path, run, table, folder)
                number += 1
                bad = bad or bool(found)
                print("%s %d - %s, %s" % ("not ok" if found else "ok", number, os.path.basename(path),
                                          os.path.basename(job) if job else "a table with a formula"))
                for line in found[:10]:
                    print("# " + line)
    print("1..%d" % number)
    return 1 if bad else 0


sys.exit(main())
