# SPDX-License-Identifier: GPL-3.0-or-later
"""steps: what many journeys do on their way, each step waited for to its end.

A key goes to whatever has the keyboard at that moment, so a step ends when what the next one acts on is there.
"""

import contextlib
import os
import re
import sqlite3

from desktop import expect, wait_until


def ask_book(book, query):
    """The rows that answer the query, out of the book on its disk and beside the program.  A book on a read-only
    file system is read as one that nobody changes."""
    mode = "mode=ro" if os.access(book, os.W_OK) else "immutable=1"
    with contextlib.closing(sqlite3.connect("file:%s?%s" % (book, mode), uri=True)) as database:
        return database.execute(query).fetchall()


def count_rows(book, table, where="1"):
    return ask_book(book, "SELECT count(*) FROM %s WHERE %s" % (table, where))[0][0]


def begin_job(program, part, first_piece=None):
    """A new job from the window's own dialog, left on the page Job; its first piece as proposed, or this one."""
    program.key("ctrl+n")
    program.window("New job")
    program.wait_focus("text box", "Part number")
    program.put(part)
    program.tab_to("text box", "First piece")
    if first_piece is not None:
        program.put(first_piece)
    program.key("Return")
    program.window(part)
    program.find("text box", "Requirement")


def list_features(program, *callouts):
    """On the page Job of a job without features."""
    for number, callout in enumerate(callouts, 1):
        program.tab_to("text box", "Requirement")
        program.put(callout)
        program.shows("Reads as")
        program.key("Return")
        program.find("row", "%d · %s" % (number, callout))


def add_person(program, person):
    """On the page Job: initials and name."""
    program.tab_to("text box", "Add: initials and name, then Enter")
    program.put(person)
    program.key("Return")
    program.find(None, re.compile(re.escape(person.split(None, 1)[1])))


def open_job_page(program):
    program.key("alt+1")
    program.wait_focus("text box", "Requirement")


def open_bench(program):
    program.key("alt+2")
    program.wait_focus("text box", "Reading")


def open_report(program):
    program.key("alt+5")
    program.find("list", "What is missing")


def open_template(program):
    """The shop's report template, from the main menu."""
    program.key("F10")
    program.wait_focus("menu item")
    program.find("menu item", re.compile("^Report template"))
    program.key("t")
    program.window("Report template")


def type_reading(program, typed):
    """Into the entry of the Bench, once what was there before is recorded."""
    program.wait_focus("text box", "Reading")
    program.wait_text("")
    program.type(typed)
    program.wait_text(typed)


def record(program, typed, unit="mm"):
    """A reading that is taken without a question."""
    type_reading(program, typed)
    program.key("Return")
    program.told("Recorded %s %s" % (typed, unit))


def measuring_step(program):
    """What the Bench measures now: the row of the feature, and what else is chosen, such as its station."""
    seen = list(program.look().walk())
    return (next((one.name for one in seen if one.role == "list item" and one.selected), ""),
            *(one.name for one in seen if one.role == "button" and one.checked))


def walk_to(program, key, where, wanted, steps=12):
    """Presses `key` until where() answers something that holds for wanted(), each step waited for."""
    for _ in range(steps):
        at = where()
        if wanted(at):
            return
        program.key(key)
        wait_until("%s to lead somewhere else" % key, lambda: where() != at)
    expect(wanted(where()), "%s does not lead there" % key)


def go_to_step(program, feature, station="", key="Prior"):
    """On the Bench, where Enter goes on by itself."""
    walk_to(program, key, lambda: measuring_step(program),
            lambda at: at[0].startswith(feature) and any(name.startswith(station) for name in at[1:]))


def press(program, role, name, back=False):
    """Goes to a button or the like and presses it."""
    program.tab_to(role, name, back=back)
    program.key("space")


def close_dialog(program, below):
    """Escape, and the window under it (whose title begins with `below`) has the keyboard again."""
    program.key("Escape")
    program.window(below)


def label_of(item):
    """What a row of an open list says: the row itself has no name."""
    return next((one.name for one in item.walk() if one.role == "label" and one.name), item.name)


def choose(program, row, wanted, back=False):
    """A choice whose name begins with `row`: Space opens its list, the arrows walk it, Enter takes."""
    box = program.tab_to(None, re.compile("^%s: " % re.escape(row)), back=back)
    chosen = "%s: %s" % (row, wanted)
    if not box.name.startswith(chosen):
        program.key("space")
        here = program.wait_focus("list item")
        items = next(one.children for one in program.look().walk() if here in one.children)
        labels = [label_of(item) for item in items]
        expect(wanted in labels, "no “%s” among “%s”" % (wanted, "”, “".join(labels)))
        at = labels.index(wanted)
        way = at - items.index(here)
        program.key(*["Down" if way > 0 else "Up"] * abs(way))
        wait_until("the focus on “%s”" % wanted, lambda: program.focused() == items[at])
        program.key("Return")
    program.wait_focus(None, re.compile("^" + re.escape(chosen)))
