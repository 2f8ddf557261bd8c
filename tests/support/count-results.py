#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Prints "PASSED FAILED": the single cases in a meson JUnit log; skipped ones count as neither."""

import sys
import xml.etree.ElementTree as tree


def main():
    passed = failed = 0
    for case in tree.parse(sys.argv[1]).getroot().iter("testcase"):
        if case.find("failure") is not None or case.find("error") is not None:
            failed += 1
        elif case.find("skipped") is None:
            passed += 1
    print(passed, failed)


main()
