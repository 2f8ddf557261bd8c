#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
#
# check-recalculation.py WRITER JOB...: opens the workbook of each job in LibreOffice as written and with the
# stored values of all formulas taken out, so that they must be calculated, and demands the same cells from
# both.  Prints TAP; skips where LibreOffice is not installed.

import csv
import os
import re
import shutil
import subprocess
import sys
import tempfile
import zipfile

# Every sheet as text, numbers with all their digits.
FILTER = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1"


def strip_values(source, target):
    """Copies a workbook without the stored values of its formulas; returns how many there were."""
    count = 0
    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            data = old.read(name)
            if name.startswith("xl/worksheets/sheet"):
                data, n = re.subn(rb"(</f>)<v>[^<]*</v>", rb"\1", data)
                count += n
            new.writestr(name, data)
    return count


def read_sheets(office, paths, folder):
    """Every sheet of every workbook, all by one start of the program: {workbook: {sheet: rows}}."""
    os.makedirs(folder)
    subprocess.run(
        [office, "--headless", "-env:UserInstallation=file://" + folder + "/profile",
         "--convert-to", FILTER, "--outdir", folder, *paths],
        check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=600)
    books = {}
    for name in sorted(os.listdir(folder)):
        if name.endswith(".csv"):
            with open(os.path.join(folder, name), encoding="utf-8", newline="") as file:
                book, sheet = name.split("-", 1)
                books.setdefault(book, {})[sheet] = list(csv.reader(file))
    return books


def same(a, b):
    if a == b:
        return True
    try:
        # Both come from the same doubles; the last digit of a printed double may differ.
        return abs(float(a) - float(b)) <= 1e-12 * max(1.0, abs(float(a)))
    except ValueError:
        return False


def find_differences(stored, calculated):
    found = []
    if stored.keys() != calculated.keys():
        found.append("sheets differ: %s, %s" % (sorted(stored), sorted(calculated)))
    for name in stored:
        for number, (left, right) in enumerate(zip(stored[name], calculated.get(name, [])), 1):
            for column, (a, b) in enumerate(zip(left, right), 1):
                if not same(a, b):
                    found.append("%s row %d column %d: stored %r, calculated %r" % (name, number, column, a, b))
                if a.startswith("Err:") or a.startswith("#"):
                    found.append("%s row %d column %d: %s" % (name, number, column, a))
    return found


def write_books(writer, jobs, folder):
    """The workbooks as "stored1" and so on, and as "stripped1"; returns their paths, and how many formulas each
    job has."""
    paths, formulas = [], []
    for number, job in enumerate(jobs, 1):
        stored, stripped = [os.path.join(folder, "%s%d.xlsx" % (way, number)) for way in ("stored", "stripped")]
        subprocess.run([writer, job, stored], check=True)
        formulas.append(strip_values(stored, stripped))
        paths += [stored, stripped]
    return paths, formulas


def check_book(books, number, formulas):
    stored, calculated = books.get("stored%d" % number, {}), books.get("stripped%d" % number, {})
    found = find_differences(stored, calculated)
    if formulas == 0:
        found.append("the workbook has no formulas")
    if not stored:
        found.append("nothing was converted")
    return found


def main():
    office = shutil.which("soffice") or shutil.which("libreoffice")
    writer, jobs = sys.argv[1], sys.argv[2:]
    if office is None:
        print("1..0 # SKIP LibreOffice is not installed")
        return 0
    bad = False
    print("1..%d" % len(jobs))
    with tempfile.TemporaryDirectory() as folder:
        paths, formulas = write_books(writer, jobs, folder)
        books = read_sheets(office, paths, os.path.join(folder, "sheets"))
    for number, job in enumerate(jobs, 1):
        found = check_book(books, number, formulas[number - 1])
        bad = bad or bool(found)
        print("%s %d - %s, %d formulas"
              % ("not ok" if found else "ok", number, os.path.basename(job), formulas[number - 1]))
        for line in found[:20]:
            print("# " + line)
    return 1 if bad else 0


sys.exit(main())
