#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""What a short script does with the same sheets: reads them with the common YAML library and loads them into SQLite
with a full-text index. No checks, no units, no links, no checksums: a floor of convenience, not of function.

    tests/bench/plain_script.py FOLDER LIBRARY
"""

import multiprocessing
import pathlib
import sqlite3
import sys

import yaml

HEADS = {"sheet", "title", "assembly", "maker", "invented", "fits", "source", "checked", "status", "cautions", "words"}


def read(path):
    with open(path, "rb") as file:
        sheet = yaml.load(file, Loader=yaml.CSafeLoader)
    rows = []
    for section, entries in sheet.items():
        if section not in HEADS:
            rows += [(sheet["sheet"], section, name, entry.get("name"), str(sheet.get("fits")), repr(entry))
                     for name, entry in entries.items()]
    return rows


def main():
    paths = sorted(pathlib.Path(sys.argv[1]).glob("*.yaml"))
    pathlib.Path(sys.argv[2]).unlink(missing_ok=True)
    database = sqlite3.connect(sys.argv[2])
    database.executescript("PRAGMA journal_mode=OFF; PRAGMA synchronous=OFF;"
                           "CREATE TABLE entry(sheet, section, id, name, fits, fields);"
                           "CREATE VIRTUAL TABLE words USING fts5(name, fits, fields, content=entry);")
    with multiprocessing.Pool() as pool:
        for rows in pool.imap(read, paths, chunksize=64):
            database.executemany("INSERT INTO entry VALUES (?, ?, ?, ?, ?, ?)", rows)
    database.executescript("INSERT INTO words(words) VALUES ('rebuild'); CREATE INDEX by_id ON entry(sheet, id);")
    database.commit()
    print(database.execute("SELECT count(*) FROM entry").fetchone()[0], "entries")


if __name__ == "__main__":
    main()
