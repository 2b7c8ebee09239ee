#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""sheaf dump gives everything: held against the same library's views, as another client reads them.

    tests/query/cli/dump.py --build DIR
"""

import argparse
import collections
import csv
import io
import json
import pathlib
import sqlite3
import subprocess
import sys
import tempfile
import unittest

BUILD = pathlib.Path("build/debug")


def sheaf(*arguments, library=None):
    return subprocess.run([BUILD / "sheaf", "dump", "--library", library or BUILD / "orrindale.sheaf", *arguments],
                          stdin=subprocess.DEVNULL, capture_output=True, text=True, check=False)


class Dump(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        done = sheaf()
        assert done.returncode == 0 and not done.stderr, done.stderr
        cls.records = collections.defaultdict(list)
        for line in done.stdout.splitlines():
            record = json.loads(line)
            cls.records[record["record"]].append(record)
        cls.database = sqlite3.connect(BUILD / "orrindale.sheaf")

    def rows(self, sql):
        return self.database.execute(sql).fetchall()

    def table(self, name):
        done = sheaf("--csv", name)
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        return list(csv.DictReader(io.StringIO(done.stdout)))

    def test_counts_are_those_the_library_states(self):
        library, = self.records["library"]
        for kind, member in (("sheet", "sheets"), ("entry", "entries"), ("word", "words")):
            self.assertEqual(len(self.records[kind]), library[member])
            self.assertGreater(library[member], 10)

    def test_every_value_of_every_field(self):
        wanted = self.rows('SELECT id, address, variant, "key", text, file, line FROM fields')
        lines = [(e["id"], e["address"], e.get("variant", ""), f["field"], f["text"], f["file"], f["line"])
                 for e in self.records["entry"] for f in e["fields"]]
        self.assertEqual(lines, wanted)
        self.assertEqual([(int(r["id"]), r["address"], r["variant"], r["field"], r["text"], r["file"], int(r["line"]))
                          for r in self.table("fields")], wanted)

    def test_every_entry_with_its_source_and_standing(self):
        wanted = self.rows("SELECT id, address, variant, kind, name, status, critical, ifnull(withdrawn_on, ''), "
                           "ifnull(source_title, ''), ifnull(source_year, 0), ifnull(checked_on, ''), file, line "
                           "FROM entries ORDER BY id")
        lines = [(e["id"], e["address"], e.get("variant", ""), e["kind"], e["name"], e.get("status", ""),
                  int(e["critical"]), e.get("withdrawn", {}).get("on", ""), e.get("source", {}).get("title", ""),
                  e.get("source", {}).get("year", 0), e.get("checked", {}).get("on", ""), e["file"], e["line"])
                 for e in self.records["entry"]]
        self.assertEqual(lines, wanted)
        rows = [(int(r["id"]), r["address"], r["variant"], r["kind"], r["name"], r["status"],
                 int(r["critical"] == "yes"), r["withdrawn-on"], r["source-title"], int(r["source-year"] or 0),
                 r["checked-on"], r["file"], int(r["line"])) for r in self.table("entries")]
        self.assertEqual(rows, wanted)

    def test_every_machine_caution_word_and_old_address(self):
        year = lambda year: int(year or 9999)
        self.assertEqual(
            sorted((int(r["id"]), r["make"], r["model"], int(r["year-from"] or 0), year(r["year-to"]), r["market"],
                    r["frame-from"], r["frame-to"], r["note"]) for r in self.table("fits")),
            sorted(self.rows("SELECT id, make, model, year_from, year_to, market, frame_from, frame_to, note FROM fits")))
        self.assertEqual([(int(r["id"]), r["caution"], r["text"]) for r in self.table("cautions")],
                         self.rows("SELECT id, caution, text FROM cautions ORDER BY id"))
        self.assertEqual([(r["make"], r["model"], int(r["year-from"] or 0), year(r["year-to"]))
                          for r in self.table("machines")], self.rows("SELECT * FROM machines"))
        self.assertEqual([(r["group"], r["word"], r["language"], r["main"] == "yes", r["never"] == "yes")
                          for r in self.table("words")], self.rows("SELECT * FROM words"))
        self.assertEqual(sorted((r["former-address"], int(r["id"])) for r in self.table("former-addresses")),
                         sorted(self.rows("SELECT former_address, id FROM former_addresses")))
        self.assertEqual([(r["sheet"], r["title"]) for r in self.table("sheets")],
                         self.rows("SELECT sheet, title FROM sheets"))

    def test_lines_and_tables_hold_the_same(self):
        sheets = {s["sheet"]: s for s in self.records["sheet"]}
        for row in self.table("sheet-fields"):
            field = {"field": row["field"], "text": row["text"], "file": row["file"], "line": int(row["line"])}
            self.assertIn(field, sheets[row["sheet"]]["fields"])
        self.assertEqual(len(self.table("sheet-fields")), sum(len(s["fields"]) for s in sheets.values()))
        self.assertEqual([(m["make"], m["model"]) for m in self.records["machine"]],
                         [(r["make"], r["model"]) for r in self.table("machines")])

    def test_damage_is_a_fault(self):
        """A record whose text was changed: everything before it may stand there, and the status says that it ended."""
        data = bytearray((BUILD / "orrindale.sheaf").read_bytes())
        at = data.index("fork top plug".encode())
        data[at + 5] ^= 1
        with tempfile.NamedTemporaryFile(suffix=".sheaf") as file:
            file.write(data)
            file.flush()
            done = sheaf(library=file.name)
        self.assertEqual(done.returncode, 2)
        self.assertIn("damaged", done.stderr)

    def test_wrong_usage(self):
        for words in (("--csv", "nothing"), ("fields",), ("--csv",)):
            with self.subTest(words):
                self.assertEqual(sheaf(*words).returncode, 2)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description="sheaf dump.")
    parser.add_argument("--build", type=pathlib.Path, default=BUILD)
    arguments, rest = parser.parse_known_args()
    BUILD = arguments.build.resolve()
    unittest.main(argv=sys.argv[:1] + rest)
