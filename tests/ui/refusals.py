#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What the window does when something cannot be done: one clear line that stays, what was typed still
in the entry, nothing half-applied.

  refusals.py PROGRAM

The cases on a full and on a read-only file system mount small ones, which takes root; they are
skipped without.
"""

import contextlib
import json
import os
import re
import sqlite3
import subprocess
import sys

from desktop import Cases, Desktop, Failed, expect, wait_until
from names import expect_named
from steps import ask_book, close_dialog, count_rows, open_bench, type_reading

PART = "JT-300"
TYPED = "11.995"
JOB = {
    "format": "tenthmark-job",
    "version": 1,
    "job": {"part_number": PART, "unit": "mm"},
    "features": [{"balloon": "1", "requirement": "12 h6"}],
    "pieces": [{"serial": "001"}],
}

# A gauge that has been overdue for years, and one set of pins.
GAUGES_JOB = {
    **JOB,
    "gauges": [
        {"tag": "OG-1", "kind": "dial bore gauge", "unit": "mm", "resolution": "0.001", "error_limit": "0.002",
         "calibrated": "2019-05-01", "due": "2020-05-01"},
        {"tag": "PS-1", "kind": "pin set", "unit": "mm", "range_from": "11.9", "range_to": "12.1",
         "pin_step": "0.002", "pin_class": "X", "pin_sign": "plus"},
    ],
    "features": [{"balloon": "1", "requirement": "12 H7", "method": "OG-1"}],
}


def write_job(path, job=None, cut=None):
    """Writes the job file, or its first `cut` bytes.  Returns its path."""
    with open(path, "w", encoding="utf-8") as file:
        file.write(json.dumps(job or JOB, indent=1)[:cut])
    return path


def find_error(program):
    """The line that says what went wrong, or None."""
    return next((one.name for one in program.look().walk()
                 if one.role == "alert" and not one.name.startswith("Gtk")), None)


def wait_error(program):
    text = wait_until("the line that says what went wrong", lambda: find_error(program))
    expect("\n" not in text, "more than one line: " + text)
    print("# says: " + text)
    return text


def go_to_bench(program):
    program.window(PART)
    open_bench(program)


def check_refused(program, book, words, before):
    """The line says why, the entry keeps what was typed, and no more than `before` is recorded."""
    text = wait_error(program)
    expect(re.search(words, text), "the line does not say why: " + text)
    program.wait_focus("text box", "Reading")
    program.wait_text(TYPED)
    expect(count_rows(book, "reading") == before, "something was recorded")


def refuse_reading(program, book, words):
    type_reading(program, TYPED)
    program.key("Return")
    check_refused(program, book, words, 0)


def record_until_full(program, book, words):
    """The write-ahead log of the book may have some room of its own left."""
    def settle():
        return find_error(program) or program.wait_focus("text box", "Reading").text == ""
    for recorded in range(200):
        type_reading(program, TYPED)
        program.key("Return")
        wait_until("an answer to Enter", settle)
        if find_error(program):
            check_refused(program, book, words, recorded)
            return
    raise Failed("a full disk recorded 200 readings")


def record_after_all(program, book):
    """Once the cause is gone, Enter alone records what stayed in the entry."""
    before = count_rows(book, "reading")
    program.key("Return")
    program.told("Recorded 11.995 mm")
    program.wait_text("")
    expect(count_rows(book, "reading") == before + 1, "the reading is not in the book")
    wait_until("the line to go, with nothing wrong any more", lambda: find_error(program) is None)


def open_bad_file(desktop, cases, name, words, **written):
    """A job file that cannot be read: the line names the file, and the book stays as it was."""
    path = write_job(desktop.path(name), **written)
    book = desktop.path(name + ".tmbook")

    def check():
        program = cases.start(desktop, cases.binary, "--book", book, path)
        text = wait_error(program)
        expect(name in text, "the line does not name the file: " + text)
        expect(re.search(words, text), "the line does not say what is wrong: " + text)
        program.find("text box", "Part number")
        expect(count_rows(book, "job") == 0, "something of the file was added")
        program.picture("refusals-" + name)
        program.quit()
    cases.run("a bad job file: " + name, check)


def meet_locked_book(desktop, cases):
    book = desktop.path("locked.tmbook")
    program = cases.start(desktop, cases.binary, "--book", book, write_job(desktop.path("job.tmjob")))
    cases.run("a job file from the command line opens at the bench", go_to_bench, program)
    with contextlib.closing(sqlite3.connect(book, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        cases.run("a locked book keeps what was typed", refuse_reading, program, book, "locked|busy|in use")
        program.picture("refusals-locked")
        other.execute("ROLLBACK")
    cases.run("it is recorded once the book is free", record_after_all, program, book)
    cases.run("the program ends", program.quit)


@contextlib.contextmanager
def small_file_system(folder, size):
    os.mkdir(folder)
    mounted = subprocess.run(["mount", "-t", "tmpfs", "-o", "size=" + size, "tmpfs", folder],
                             capture_output=True)
    try:
        yield mounted.returncode == 0
    finally:
        if mounted.returncode == 0:
            subprocess.run(["umount", "-l", folder], check=True)


def fill(folder):
    """Takes all the room that is left in `folder`.  Returns the file that holds it."""
    path = os.path.join(folder, "filler")
    with open(path, "wb", buffering=0) as file:
        with contextlib.suppress(OSError):
            while True:
                file.write(b"\0" * 1024)
    return path


def meet_full_disk(desktop, cases):
    folder = desktop.path("small")
    with small_file_system(folder, "2m") as mounted:
        if not mounted:
            cases.skip("a full disk keeps what was typed", "no file system can be mounted here")
            return
        book = os.path.join(folder, "shop.tmbook")
        program = cases.start(desktop, cases.binary, "--book", book, write_job(desktop.path("job.tmjob")))
        go_to_bench(program)
        filler = fill(folder)
        cases.run("a full disk keeps what was typed", record_until_full, program, book, "full|room|space")
        program.picture("refusals-full")
        os.remove(filler)
        cases.run("it is recorded once there is room", record_after_all, program, book)
        cases.run("the program ends after a full disk", program.quit)


def meet_read_only(desktop, cases):
    folder = desktop.path("fixed")
    with small_file_system(folder, "2m") as mounted:
        if not mounted:
            cases.skip("a read-only book keeps what was typed", "no file system can be mounted here")
            return
        book = os.path.join(folder, "shop.tmbook")
        program = cases.start(desktop, cases.binary, "--book", book, write_job(desktop.path("job.tmjob")))
        go_to_bench(program)
        program.quit()
        subprocess.run(["mount", "-o", "remount,ro", folder], check=True)
        program = cases.start(desktop, cases.binary, "--book", book)
        program.find("row", PART)
        program.tab_to("search box", "Search the jobs")
        program.key("Return")
        go_to_bench(program)
        cases.run("a read-only book keeps what was typed", refuse_reading, program, book, "read.?only")
        program.picture("refusals-read-only")
        cases.run("the program ends after a read-only book", program.quit)


def ask_why_overdue(program):
    """Enter opens the dialog that names gauge and date; nothing is recorded and the text stays."""
    program.key("Return")
    program.window("A gauge past its due date")
    program.wait_focus("text box", "Why it is used all the same")
    text = program.shows("OG-1")
    expect("2020-05-01" in text and "calibrate it" in text, "the refusal says: " + text)
    expect_named(program)
    program.picture("refusals-overdue")


def refuse_overdue(program, book):
    type_reading(program, "12.010")
    ask_why_overdue(program)
    close_dialog(program, PART)
    program.wait_focus("text box", "Reading")
    program.wait_text("12.010")
    expect(count_rows(book, "reading") == 0, "a reading by an overdue gauge was recorded without a reason")


def excuse_overdue(program, book):
    ask_why_overdue(program)
    program.type("booked for Friday")
    program.key("Return")
    program.window(PART)
    program.told("Recorded 12.010 mm")
    expect(ask_book(book, "SELECT overdue_reason FROM reading") == [("booked for Friday",)],
           "the reason is not in the book")


def refuse_pin(program, book):
    """A pin that no set holds, and one that the set does hold."""
    program.wait_focus("text box", "Reading")
    program.put("12.007+")
    program.key("Return")
    text = wait_error(program)
    expect("no pin set of this job holds 12.007" in text, "the line says: " + text)
    program.wait_text("12.007+")
    expect(count_rows(book, "pin_trial") == 0, "a pin that is in no set was recorded")
    program.picture("refusals-pin")
    program.put("12.006+")
    program.key("Return")
    program.told("Recorded pin 12.006, class X plus, went")
    expect(count_rows(book, "pin_trial") == 1, "the pin trial is not in the book")


def meet_gauges(desktop, cases):
    book = desktop.path("gauges.tmbook")
    path = write_job(desktop.path("gauges.tmjob"), GAUGES_JOB)
    program = cases.start(desktop, cases.binary, "--book", book, path)
    go_to_bench(program)
    cases.run("an overdue gauge is not used without a reason", refuse_overdue, program, book)
    cases.run("it is with one, and nothing typed is lost", excuse_overdue, program, book)
    cases.run("a pin that is in no set is refused", refuse_pin, program, book)
    cases.run("the program ends after that", program.quit)


def main(binary):
    cases = Cases()
    cases.binary = binary
    with Desktop() as desktop:
        later = {**JOB, "version": 9}
        wrong = {**JOB, "features": [{"balloon": "1", "requirement": "12 h6", "lower": "25,0x"}]}
        open_bad_file(desktop, cases, "truncated.tmjob", ".", cut=120)
        open_bad_file(desktop, cases, "later.tmjob", "version", job=later)
        open_bad_file(desktop, cases, "wrong.tmjob", r"features\[0\]\.lower", job=wrong)
        meet_gauges(desktop, cases)
        meet_locked_book(desktop, cases)
        meet_full_disk(desktop, cases)
        meet_read_only(desktop, cases)
    return cases.finish()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
