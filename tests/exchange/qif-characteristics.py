#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""qif-characteristics.py FILE...: the characteristics of QIF files, read by another XML reader and with
exact fractions, one line for each item: file, designator, lower and upper limit in picometres ("-": none).

Written from the schema alone, to hold the program's own reading against.  Lengths only, which is all that
the public samples have; a file without units is taken in millimetres.
"""

import sys
import xml.etree.ElementTree as ElementTree
from fractions import Fraction

QIF = "{http://qifstandards.org/xsd/qif3}"


def child(element, path):
    return element.find("/".join(QIF + name for name in path.split("/")))


def text(element, path):
    found = child(element, path)
    return None if found is None or found.text is None else found.text.strip()


def number(element, path):
    found = text(element, path)
    return None if found is None else Fraction(found)


def tolerances(definition, nominal):
    """Lower and upper limit in the unit of the file, or none where the file has no pair that could be judged."""
    zone = number(definition, "ToleranceValue")
    if zone is not None:
        uneven = child(definition, "OuterDisposition") is not None
        uneven = uneven or child(definition, "UnequallyDisposedZone") is not None
        return (None, None) if uneven else (None, zone)
    low, high = number(definition, "Tolerance/MinValue"), number(definition, "Tolerance/MaxValue")
    target = number(nominal, "TargetValue")
    if low is None and high is None:
        return None, None
    if text(definition, "Tolerance/DefinedAsLimit") in ("false", "0"):
        low = None if low is None else low + target
        high = None if high is None else high + target
    # A nominal outside of the limits is the rule for a shaft 25 p6, but not farther away than half of itself.
    if target is not None and low is not None and low - target > abs(target) / 2:
        return None, None
    if target is not None and high is not None and target - high > abs(target) / 2:
        return None, None
    return low, high


def picometres(value, factor):
    return "-" if value is None else str(round(value * factor * 10**12))


def main():
    for path in sys.argv[1:]:
        root = ElementTree.parse(path).getroot()
        factor = number(root, "FileUnits/PrimaryUnits/LinearUnit/UnitConversion/Factor") or Fraction(1, 1000)
        by_id = {element.get("id").strip(): element for element in root.iter() if element.get("id")}
        for item in child(root, "Characteristics/CharacteristicItems"):
            nominal = by_id[text(item, "CharacteristicNominalId")]
            low, high = tolerances(by_id[text(nominal, "CharacteristicDefinitionId")], nominal)
            name = text(item, "CharacteristicDesignator/Designator") or text(item, "Name")
            print(path, name, picometres(low, factor),
                  picometres(high, factor), sep="\t")


main()
