#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""Whole processes, each started 200 times in turn with the others: sheaf find, the bare program plain_query, the sqlite3
shell with a full-text index of the same entries, and a text search over the sheets they came from.

    tests/bench/whole_process.py PROGRAMS LIBRARY SHEETS

PROGRAMS is the folder of the Release build, SHEETS what synthetic_sheets wrote; the full-text index is made once, beside
the library. Times are by the clock, from before the start to after the end, with the output thrown away. Who asks often
does not name the library each time: sheaf finds it by SHEAF_LIBRARY, and once more named by a flag, beside that. Both of our
programs are copied first, as installing does: what a linker wrote piece by piece lies in the system's cache in small
pieces, and is slower to start until it is read anew.
"""

import os
import pathlib
import shutil
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time

PAIRS = 200
ALL = """WITH said AS (SELECT id, group_concat(text, ' ') AS fields FROM library.fields GROUP BY id),
              fitted AS (SELECT id, group_concat(make || ' ' || model, ' ') AS fits FROM library.fits GROUP BY id)
         INSERT INTO words SELECT address, name, fits, fields FROM library.entries
             LEFT JOIN said USING (id) LEFT JOIN fitted USING (id)"""


def full_text(library):
    """The same entries in a full-text index of SQLite."""
    path = library.with_suffix(".fts")
    if not path.exists():
        database = sqlite3.connect(path)
        database.executescript("PRAGMA journal_mode=OFF; PRAGMA synchronous=OFF;"
                               "CREATE VIRTUAL TABLE words USING fts5(address, name, fits, fields)")
        database.execute("ATTACH ? AS library", (f"file:{library}?immutable=1",))
        database.execute(ALL)
        database.execute("INSERT INTO words(words) VALUES ('optimize')")
        database.commit()
    return path


def questions(library):
    """A part of a machine from the middle of the fleet; the same in a year; and that part of any machine."""
    rows = sqlite3.connect(f"file:{library}?immutable=1", uri=True)
    name, model, year = rows.execute(
        "SELECT name, model, year_from FROM entries JOIN fits USING (id) WHERE kind = 'fastener' "
        "AND id > (SELECT max(id) / 2 FROM entry) ORDER BY id LIMIT 1").fetchone()
    model = model.split()[0]
    return [(f"{name} {model}", name, model), (f"{name} {model} {year + 1}", name, model), (name, name, "")]


def run(arguments):
    """Milliseconds."""
    nothing = [(os.POSIX_SPAWN_OPEN, 1, os.devnull, os.O_WRONLY, 0)]
    begun = time.perf_counter()
    process = os.posix_spawn(arguments[0], arguments, os.environ, file_actions=nothing)
    _, status = os.waitpid(process, 0)
    took = 1000 * (time.perf_counter() - begun)
    if os.waitstatus_to_exitcode(status) != 0:
        sys.exit("failed: " + " ".join(arguments))
    return took


def megabytes(arguments):
    """The most that it held; asked of GNU time, since a process begins with what the one that starts it holds."""
    said = subprocess.run(["/usr/bin/time", "-f", "%M", *arguments], stdout=subprocess.DEVNULL, stderr=subprocess.PIPE,
                          text=True, check=True).stderr
    return int(said.split()[-1]) / 1024


def main():
    built, library, sheets = map(pathlib.Path, sys.argv[1:])
    with tempfile.TemporaryDirectory() as programs:
        for program in ("sheaf", "plain_query"):
            shutil.copy(built / program, programs)
        compare(programs, library, sheets)


def compare(programs, library, sheets):
    index = full_text(library)
    os.environ["SHEAF_LIBRARY"] = f"{library.resolve()}"
    for question, name, model in questions(library):
        match = f"{name} {model}".strip().replace('"', "")
        contenders = {
            "sheaf find": [f"{programs}/sheaf", "find", *question.split()],
            "sheaf find --library": [f"{programs}/sheaf", "find", "--library", f"{library}", *question.split()],
            "plain_query": [f"{programs}/plain_query", f"{library}", *name.split()],
            "sqlite3 with FTS5": ["/usr/bin/sqlite3", f"{index}", "SELECT address, name, fields FROM words "
                                  f"WHERE words MATCH '{match}' ORDER BY rank LIMIT 10"],
            "rg": ["/usr/bin/rg", "-i", name, f"{sheets}"],
        }
        times = {contender: [] for contender in contenders}
        for turn in range(PAIRS + 1):
            for contender, arguments in contenders.items():
                if contender == "rg" and turn > PAIRS / 20:
                    continue  # it takes long enough to be sure of it sooner
                took = run(arguments)
                if turn > 0:  # once to warm the files
                    times[contender].append(took)
        ours, bare = times["sheaf find"], times["plain_query"]
        print(f"{question}: {statistics.median(a - b for a, b in zip(ours, bare)):.2f} ms above the bare program, "
              f"{statistics.median(ours) / statistics.median(bare):.2f} times it")
        for contender, taken in times.items():
            print(f"    {contender:20} {statistics.median(taken):8.2f} ms {megabytes(contenders[contender]):7.1f} MB")


if __name__ == "__main__":
    main()
