# SPDX-License-Identifier: GPL-3.0-or-later
"""workbook: reads the cells of a spreadsheet file (.xlsx), as stored."""

import re
import xml.etree.ElementTree as tree
import zipfile

SHEET = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
LINK = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}"


def _shared_texts(archive):
    try:
        root = tree.fromstring(archive.read("xl/sharedStrings.xml"))
    except KeyError:
        return []
    return ["".join(part.text or "" for part in item.iter(SHEET + "t")) for item in root.iter(SHEET + "si")]


def _sheet_paths(archive):
    """Name of each sheet and where its cells are."""
    links = tree.fromstring(archive.read("xl/_rels/workbook.xml.rels"))
    targets = {link.get("Id"): link.get("Target").lstrip("/") for link in links}
    for sheet in tree.fromstring(archive.read("xl/workbook.xml")).iter(SHEET + "sheet"):
        target = targets[sheet.get(LINK + "id")]
        yield sheet.get("name"), target if target.startswith("xl/") else "xl/" + target


def _value(cell, texts):
    """Text as str, a number as float, a formula as the value stored beside it."""
    kind = cell.get("t")
    if kind == "inlineStr":
        return "".join(part.text or "" for part in cell.iter(SHEET + "t"))
    stored = cell.find(SHEET + "v")
    if stored is None or stored.text is None:
        return None
    if kind == "s":
        return texts[int(stored.text)]
    return stored.text if kind in ("str", "b", "e") else float(stored.text)


def _column(reference):
    number = 0
    for letter in re.match("[A-Z]+", reference).group():
        number = number * 26 + ord(letter) - ord("A") + 1
    return number - 1


def read_workbook(path):
    """{sheet name: [row as {column number from 0: value}]}, empty cells left out."""
    with zipfile.ZipFile(path) as archive:
        texts = _shared_texts(archive)
        sheets = {}
        for name, where in _sheet_paths(archive):
            rows = []
            for row in tree.fromstring(archive.read(where)).iter(SHEET + "row"):
                cells = {_column(cell.get("r")): _value(cell, texts) for cell in row.iter(SHEET + "c")}
                rows.append({column: value for column, value in cells.items() if value is not None})
            sheets[name] = rows
        return sheets


def find_table(rows, heading):
    """The rows under the first row that holds `heading`, each as {heading: value}."""
    for at, row in enumerate(rows):
        if heading in row.values():
            return [{row[column]: cell for column, cell in below.items() if column in row}
                    for below in rows[at + 1:]]
    return []
