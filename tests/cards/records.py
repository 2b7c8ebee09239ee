#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""Records of cards: as the published schema says, and whole whatever interrupts them.

The program is killed while it keeps answers, at many moments; what is in the file then must be a whole record that
holds every answer whose successor was already asked for. A full disk leaves the old record as it was.

    tests/cards/records.py [--build DIR] [unittest arguments]
"""

import json
import os
import pathlib
import re
import resource
import signal
import subprocess
import sys
import tempfile
import unittest

import jsonschema

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
BUILD = ROOT / "build" / "debug"
SCHEMA = json.loads((ROOT / "query/answer/card-record.schema.json").read_text("utf-8"))
CARD = ["card", "fork", "muleback", "2013"]
KILLS = 60


class Records(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory(prefix="records-")
        self.addCleanup(folder.cleanup)
        self.file = pathlib.Path(folder.name) / "job.json"

    def start(self, *words, **options):
        env = {k: v for k, v in os.environ.items() if k.endswith("SAN_OPTIONS")} | {
            "SHEAF_LIBRARY": str(BUILD / "orrindale.sheaf"), "SHEAF_TODAY": "2026-11-25", "LC_ALL": "C.UTF-8"}
        return subprocess.Popen([BUILD / "sheaf", *CARD, *map(str, words)], env=env, stdin=subprocess.PIPE,
                                stdout=subprocess.PIPE, stderr=subprocess.PIPE, **options)

    def run_card(self, *words, **options):
        with self.start(*words, **options) as done:
            out, err = done.communicate(timeout=60)
        return done.returncode, out.decode("utf-8"), err.decode("utf-8")

    def kept(self):
        record = json.loads(self.file.read_text("utf-8"))
        jsonschema.Draft7Validator(SCHEMA).validate(record)
        return record

    def test_every_item_of_the_card_can_be_kept(self):
        card = json.loads(self.run_card("--json")[1])["card"]
        entries = [entry for section in ("settings", "steps", "fasteners", "fluids", "measures")
                   for entry in card[section]]
        items = [item for each in card["identify"] + entries for item in each["items"]]
        self.assertEqual(len({item["id"] for item in items}), len(items), "names are unique")
        words = ["--record", self.file, "--job", "by=N."]
        for item in items:
            name = re.sub("/(found|set|measured)(?=/|$)", "", item["id"])
            values = {"found": "4", "set": "4", "measured": "118" if "fork-oil" in name else None}
            if item["deed"] in values:
                value = values[item["deed"]] or {"spring-length": "490", "bushing-wear": "10"}.get(name, "0.1")
                words += ["--" + item["deed"], f"{name}={value}"]
            else:
                words += ["--done", item["id"]]
        status, out, err = self.run_card(*words)
        self.assertEqual((status, err), (0, ""), out)
        self.assertEqual(set(self.kept()["items"]), {item["id"] for item in items})

    def test_schema_refuses_what_is_no_record(self):
        self.run_card("--record", self.file, "--done", "top-plug")
        good = self.kept()
        for bad in ({"more": 1}, {"schema": 2}, {"items": {"a": 3}}, {"machine": {"year": "2013"}}, {"sheet": 1}):
            with self.subTest(bad=bad), self.assertRaises(jsonschema.ValidationError):
                jsonschema.validate(good | bad, SCHEMA)
            self.file.write_text(json.dumps(good | bad), "utf-8")
            self.assertEqual(self.run_card("--record", self.file)[0], 2, bad)

    def test_killed_while_it_keeps_answers(self):
        for answers in range(1, KILLS + 1):
            self.file.unlink(missing_ok=True)
            with self.start("--record", self.file, "--ask", bufsize=0) as asking:
                asked = asking.stdout.read(1)
                for _ in range(answers % 9 + 1):
                    while not asked.endswith((b"? ", b": ")):
                        asked += asking.stdout.read(1)
                    box = asked.endswith(b"y? ")
                    asking.stdin.write(b"y\n" if box else b"4\n")
                    asked = asking.stdout.read(1)  # the next question has begun: the answer is kept
                asking.stdin.write(b"4\n" if box else b"y\n")
                asking.send_signal(signal.SIGKILL)
            self.assertGreaterEqual(len(self.kept()["items"]), answers % 9 + 1)

    def test_full_disk_leaves_the_old_record(self):
        self.run_card("--record", self.file, "--done", "top-plug")
        before = self.file.read_bytes()

        def no_room():
            signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
            resource.setrlimit(resource.RLIMIT_FSIZE, (16, 16))

        status, _, err = self.run_card("--record", self.file, "--done", "drain", preexec_fn=no_room)
        self.assertEqual(status, 2)
        self.assertIn("cannot write", err)
        self.assertEqual(self.file.read_bytes(), before)
        self.assertEqual([path.name for path in self.file.parent.iterdir()], [self.file.name])


if __name__ == "__main__":
    if len(sys.argv) > 2 and sys.argv[1] == "--build":
        BUILD = pathlib.Path(sys.argv[2]).resolve()
        del sys.argv[1:3]
    unittest.main()
