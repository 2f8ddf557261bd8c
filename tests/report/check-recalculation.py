#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
#
# check-recalculation.py WRITER JOB...: opens the workbook of each job in the spreadsheet programs that are
# installed.  Each is told to calculate a copy whose stored values of all formulas are spoiled, and must come to
# the cells of the workbook as it was written.  Where openpyxl is installed, every reading and limit is read back
# and held against the decimal text of the job file.  Prints TAP.

import csv
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
import zipfile
from decimal import Decimal

try:
    import openpyxl
except ImportError:
    openpyxl = None

# Every sheet as text, numbers with all their digits.
FILTER = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1"
SPOILED_TEXT, SPOILED_NUMBER = "spoiled", "987654.25"
ALWAYS = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse">
<value>0</value></prop></item></oor:items>
"""
# Marks of series that the standard knows (ECMA-376 part 1, 21.2.3.27).
SYMBOLS = {b"circle", b"dash", b"diamond", b"dot", b"none", b"picture", b"plus", b"square", b"star", b"triangle",
           b"x", b"auto"}
MILLIMETRES = {"mm": Decimal(1), "in": Decimal("25.4"), "um": Decimal("0.001"), "uin": Decimal("0.0000254")}


# ---- Workbooks ----

def spoil(source, target):
    """Copies a workbook with other stored values in its formulas; returns how many there were."""
    count = 0

    def put(match):
        value = SPOILED_TEXT if b't="str"' in match.group(1) else SPOILED_NUMBER
        return match.group(1) + b"<v>" + value.encode() + b"</v>"

    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            data = old.read(name)
            if name.startswith("xl/worksheets/sheet"):
                data, n = re.subn(rb"(<c [^>]*><f>[^<]*</f>)<v>[^<]*</v>", put, data)
                count += n
            new.writestr(name, data)
    return count


def find_wrong_marks(path):
    """What no spreadsheet program may find in a chart."""
    with zipfile.ZipFile(path) as book:
        return {mark.decode() for name in book.namelist() if name.startswith("xl/charts/")
                for mark in re.findall(rb'<c:symbol val="([^"]*)"', book.read(name))
                if mark not in SYMBOLS}


def read_tables(folder, separator):
    """{sheet: rows} of the files "book<separator>sheet.csv" in a folder, by book."""
    books = {}
    for name in sorted(os.listdir(folder)):
        if name.endswith(".csv"):
            with open(os.path.join(folder, name), encoding="utf-8", newline="") as file:
                book, sheet = name[:-4].split(separator, 1)
                books.setdefault(book, {})[sheet] = list(csv.reader(file))
    return books


# ---- The programs ----

def run_office(office, paths, folder, always):
    """All workbooks by one start of the program, with a profile of its own."""
    profile = os.path.join(folder, "profile")
    os.makedirs(os.path.join(profile, "user"))
    if always:
        with open(os.path.join(profile, "user", "registrymodifications.xcu"), "w", encoding="utf-8") as file:
            file.write(ALWAYS)
    subprocess.run(
        [office, "--headless", "-env:UserInstallation=file://" + profile, "--convert-to", FILTER,
         "--outdir", folder, *paths],
        check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=600)
    return read_tables(folder, "-"), ""


def drop_known(said):
    """Without what is known: a display is not needed, and this program draws no error bars, which mark the events on
    a batch's chart, but reads all else of it."""
    lines = [line for line in said.splitlines()
             if line.strip() and not re.search("Gtk-WARNING|dconf|'c:noEndCap'|'c:val'|-> errBars$", line)]
    return "".join(line + "\n" for line in lines)


def run_sheets(ssconvert, paths, folder, always):
    os.makedirs(folder)
    said = ""
    for path in paths:
        book = os.path.basename(path)[:-5]
        result = subprocess.run(
            [ssconvert, "-S", *(["--recalc"] if always else []), "--export-type=Gnumeric_stf:stf_csv",
             path, os.path.join(folder, book + "-%s.csv")],
            check=True, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, timeout=600)
        said += drop_known(result.stderr.decode(errors="replace"))
    return read_tables(folder, "-"), said


# ---- Comparing ----

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


def holds_spoiled(sheets):
    return any(SPOILED_TEXT in row or SPOILED_NUMBER in row for rows in sheets.values() for row in rows)


# ---- The record ----

def read_decimal(text, unit):
    """A job file's length in the feature's unit; None where that is another kind of number."""
    match = re.fullmatch(r"([-+]?[0-9.]+)(?: (\w+))?", text)
    if match is None:
        return None
    value = Decimal(match.group(1))
    if match.group(2) is None or match.group(2) == unit:
        return value
    if match.group(2) in MILLIMETRES and unit in MILLIMETRES:
        return value * MILLIMETRES[match.group(2)] / MILLIMETRES[unit]
    return None


def find_unequal(what, cell, text, unit):
    expected = read_decimal(text, unit)
    if expected is None:
        return []
    if cell.value is None or isinstance(cell.value, str) or float(cell.value) != float(expected):
        return ["%s: %r in the workbook, %s in the record" % (what, cell.value, expected)]
    # And the cell shows all the digits that were written.
    digits = cell.number_format.partition(".")[2].count("0")
    if " " not in text and Decimal("%.*f" % (digits, cell.value)) != expected:
        return ["%s: shown as %s, %s in the record" % (what, cell.number_format, expected)]
    return []


def list_cells(book, name):
    """The cells of a named range."""
    sheet, cells = next(iter(book.defined_names[name].destinations))
    area = book[sheet][cells]
    return [row[0] for row in area] if isinstance(area, tuple) else [area]


def check_reading(reading, unit, read):
    what = "reading " + reading["id"]
    cell = read.get(reading["id"])
    if cell is None:
        return [what + " is not in the workbook"]
    if reading.get("value") in ("pass", "fail"):
        return [] if cell.value == reading["value"] else ["%s: %r" % (what, cell.value)]
    found = []
    # Of a position the two offsets are read; they stand two and three columns on.
    for member, column in ("value", 0), ("dx", 2), ("dy", 3):
        if member in reading:
            found += find_unequal("%s, %s" % (what, member), cell.offset(0, column), reading[member], unit)
    return found


def check_record(path, job_path):
    with open(job_path, encoding="utf-8") as file:
        job = json.load(file)
    unit = job["job"].get("unit", "mm")
    features = {feature["balloon"]: feature for feature in job["features"]}
    book = openpyxl.load_workbook(path, data_only=True)
    read = dict(zip((cell.value for cell in list_cells(book, "Reading_number")), list_cells(book, "Reading_value")))
    found = [] if len(read) == len(job["readings"]) else ["%d readings in the workbook" % len(read)]
    for reading in job["readings"]:
        found += check_reading(reading, features[reading["feature"]].get("unit", unit), read)
    for name, member in ("Nominal", "nominal"), ("Lower_limit", "lower"):
        for number, cell in zip(list_cells(book, "Characteristic"), list_cells(book, name)):
            feature = features[number.value]
            if member in feature:
                found += find_unequal("%s of %s" % (member, number.value), cell, feature[member],
                                      feature.get("unit", unit))
    checks = list_cells(book, "Self_check")[0].value
    if checks != 0:
        found.append("%r checks of the workbook's own fail" % checks)
    return found


# ---- The tests ----

class Results:
    def __init__(self):
        self.number, self.bad = 0, False

    def add(self, name, found):
        self.number += 1
        self.bad = self.bad or bool(found)
        print("%s %d - %s" % ("not ok" if found else "ok", self.number, name))
        for line in found[:20]:
            print("# " + line)

    def skip(self, name, why):
        self.number += 1
        print("ok %d - %s # SKIP %s" % (self.number, name, why))


def check_program(results, name, run, names, books, folder):
    stored, spoiled = [path for path, _ in books], [path for _, path in books]
    as_written, said = run(stored + spoiled, os.path.join(folder, name + "-written"), False)
    calculated, _ = run(spoiled, os.path.join(folder, name + "-calculated"), True)
    results.add("%s opens them without a word" % name, said.splitlines())
    for number, job in enumerate(names, 1):
        found = []
        before, after = as_written.get("stored%d" % number, {}), calculated.get("spoiled%d" % number, {})
        if not before:
            found.append("nothing was converted")
        if not holds_spoiled(as_written.get("spoiled%d" % number, {})):
            found.append("stored values are not shown as they are: this proves nothing")
        results.add("%s, %s" % (name, job), found + find_differences(before, after))


def main():
    writer, jobs = sys.argv[1], sys.argv[2:]
    office = shutil.which("soffice") or shutil.which("libreoffice")
    ssconvert = shutil.which("ssconvert")
    names = [os.path.basename(job) for job in jobs] + ["in German and English"]
    results = Results()
    books = []
    with tempfile.TemporaryDirectory() as folder:
        for number, job in enumerate(jobs + jobs[:1], 1):
            stored, spoiled = [os.path.join(folder, "%s%d.xlsx" % (way, number)) for way in ("stored", "spoiled")]
            words = ["de", "en"] if number > len(jobs) else []
            subprocess.run([writer, job, stored, *words], check=True)
            count = spoil(stored, spoiled)
            results.add("%s has formulas" % names[number - 1], [] if count > 10 else ["%d formulas" % count])
            results.add("%s has marks that the standard knows" % names[number - 1],
                        sorted(find_wrong_marks(stored)))
            books.append((stored, spoiled))
        if office is not None:
            check_program(results, "LibreOffice", lambda *rest: run_office(office, *rest), names, books, folder)
        else:
            results.skip("LibreOffice", "not installed")
        if ssconvert is not None:
            check_program(results, "Gnumeric", lambda *rest: run_sheets(ssconvert, *rest), names, books, folder)
        else:
            results.skip("Gnumeric", "not installed")
        for number, job in enumerate(jobs):
            if openpyxl is not None:
                results.add("openpyxl, %s" % names[number], check_record(books[number][0], job))
            else:
                results.skip("openpyxl, %s" % names[number], "not installed")
    print("1..%d" % results.number)
    return 1 if results.bad else 0


sys.exit(main())
