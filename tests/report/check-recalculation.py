#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
#
# check-recalculation.py WRITER JOB...: opens the workbook of each job in LibreOffice twice, once as
# written and once with the stored values of all formulas taken out, so that they must be calculated,
# and demands the same cells from both.  Prints TAP; skips where LibreOffice is not installed.

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


def read_sheets(office, path, folder):
    os.makedirs(folder)
    subprocess.run(
        [office, "--headless", "-env:UserInstallation=file://" + folder + "/profile",
         "--convert-to", FILTER, "--outdir", folder, path],
        check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=300)
    sheets = {}
    for name in sorted(os.listdir(folder)):
        if name.endswith(".csv"):
            with open(os.path.join(folder, name), encoding="utf-8", newline="") as file:
                sheets[name.split("-", 1)[1]] = list(csv.reader(file))
    return sheets


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


def check_job(office, writer, job, folder):
    base = os.path.join(folder, os.path.splitext(os.path.basename(job))[0])
    subprocess.run([writer, job, base + ".xlsx"], check=True)
    os.makedirs(base + "-stripped")
    stripped = os.path.join(base + "-stripped", os.path.basename(base) + ".xlsx")
    formulas = strip_values(base + ".xlsx", stripped)
    stored = read_sheets(office, base + ".xlsx", base + "-stored")
    calculated = read_sheets(office, stripped, base + "-calculated")
    found = find_differences(stored, calculated)
    if formulas == 0:
        found.append("the workbook has no formulas")
    if not stored:
        found.append("nothing was converted")
    return formulas, found


def main():
    office = shutil.which("soffice") or shutil.which("libreoffice")
    writer, jobs = sys.argv[1], sys.argv[2:]
    if office is None:
        print("1..0 # SKIP LibreOffice is not installed")
        return 0
    bad = False
    print("1..%d" % len(jobs))
    with tempfile.TemporaryDirectory() as folder:
        for number, job in enumerate(jobs, 1):
            formulas, found = check_job(office, writer, job, folder)
            bad = bad or bool(found)
            print("%s %d - %s, %d formulas" % ("not ok" if found else "ok", number, os.path.basename(job), formulas))
            for line in found[:20]:
                print("# " + line)
    return 1 if bad else 0


sys.exit(main())
