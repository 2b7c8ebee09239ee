#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""One change after another to the sheets, the small ones without reading the rest: each build gives the bytes, the
messages and the status of a build of all sheets in a fresh place.

    tests/compiler/cli/changes.py --build DIR
"""

import argparse
import os
import pathlib
import random
import re
import shutil
import subprocess
import sys
import tempfile
import time
import unittest

BUILD = pathlib.Path("build/debug")
SECONDS = 120
COUNT = 30
MODELS = "Muleback 380", "Muleback 500", "Fellrunner 250"

TABLE = """sheet: screw-threads
title: A few threads
table: thread-size
source: { title: ISO 724, edition: 1, year: 1993 }
checked: { on: 2026-10-02, by: workshop, against: source }
key: thread
columns: { thread: thread, series: text, pitch: mm, stress-area: mm² }
rows:
  - [M6x1, coarse, 1, 20.1]
  - [M8x1.25, coarse, 1.25, 36.6]
"""
WORDS = """sheet: our-words
title: Our words
words:
  screw: { same: [screw, bolt] }
cautions:
  spring-load: { text: A spring under load lies below. }
"""


def sheet(number, *, base=None, years="2011..2015", torque="9", name="cover screw", allow="", more="", on="2026-10-02",
          caution="spring-load"):
    """A fork with a few figures; every figure its own line, so that a change moves none."""
    return f"""sheet: fork-{number:02}
title: Fork {number}
assembly: fork
maker: Sorvane
invented: yes
{f"based-on: fork-{base:02}" if base is not None else "# a fork of its own"}
fits: {{ make: Haldrek, model: {MODELS[number % 3]} {number}, years: {years} }}
source: {{ title: Sorvane fork service leaflet {number}, edition: 2, year: 2012, page: 5 }}
checked: {{ on: {on}, by: workshop, against: source }}
cautions: [{caution}]
{allow}
fasteners:
  screw-a: {{ name: {name} {number}, thread: M6x1, torque: {torque} N·m, state: dry, part-number: A-{number} }}
  screw-b: {{ name: lower guard screw, thread: M8x1.25, torque: 22 N·m, state: dry }}
{more}"""


class Changes(unittest.TestCase):
    def setUp(self):
        self.here = pathlib.Path(tempfile.mkdtemp(prefix="changes-"))
        self.addCleanup(shutil.rmtree, self.here, ignore_errors=True)
        self.sheets = self.here / "sheets"
        self.sheets.mkdir()
        self.written = set()
        (self.here / "fresh").mkdir()
        self.cache = self.here / "cache"
        self.env = {"PATH": "/usr/bin:/bin", "XDG_CACHE_HOME": str(self.cache), "TERM": "dumb", "LC_ALL": "C.UTF-8",
                    "SOURCE_DATE_EPOCH": "1795900000"}
        self.env |= {k: v for k, v in os.environ.items() if k.endswith("SAN_OPTIONS")}
        self.write("screw-threads", TABLE)
        self.write("our-words", WORDS)
        for number in range(COUNT):
            self.put(number)

    def write(self, name, text):
        self.written.add(name)
        (self.sheets / f"{name}.yaml").write_text(text, "utf-8")

    def put(self, number, **what):
        if number % 7 == 6:  # based on its neighbour, and speaking of another
            what = {"base": number - 1, "years": "2016..",
                    "more": f"steps:\n  close: {{ name: close it, do: Fit the screw., uses: [fork-{number - 3:02}/screw-a] }}\n"} | what
        self.write(f"fork-{number:02}", sheet(number, **what))

    def run_sheafc(self, output, *flags, trace=None):
        command = [BUILD / "sheafc", "build", "sheets", "-o", output, *flags]
        env = self.env
        if trace:  # under which the sanitizers cannot look for leaks
            env = env | {"ASAN_OPTIONS": env.get("ASAN_OPTIONS", "") + ":detect_leaks=0"}
            command = ["strace", "-f", "-e", "trace=open,openat", "-o", trace, *command]
        done = subprocess.run(list(map(str, command)), cwd=self.here, env=env, stdin=subprocess.DEVNULL,
                              capture_output=True, text=True, timeout=SECONDS, check=False)
        return done.returncode, done.stderr

    def check(self, trace=None):
        """Builds with what is kept, and without; the status of both."""
        library, fresh = self.here / "fleet.sheaf", self.here / "fresh/fleet.sheaf"
        before = library.read_bytes() if library.exists() else None
        fresh.unlink(missing_ok=True)
        status, said = self.run_sheafc("fleet.sheaf", trace=trace)
        clean_status, clean_said = self.run_sheafc("fresh/fleet.sheaf", "--no-cache")
        said = said.replace("fleet.sheaf is up to date", "wrote fleet.sheaf")
        self.assertEqual((status, said), (clean_status, clean_said.replace("fresh/fleet.sheaf", "fleet.sheaf")))
        if status == 0:
            self.assertEqual(library.read_bytes(), fresh.read_bytes(), "the library is not that of a build of all sheets")
        else:
            self.assertEqual(library.read_bytes() if library.exists() else None, before)
        return status

    def assert_reads(self, change, *expected, status=0):
        """Which sheets a build after the change opens, besides the common ones. One that was written to in the last
        seconds may be opened to see whether it is what it was."""
        just_written = set(self.written)
        change()
        trace = self.here / "trace"
        self.assertEqual(self.check(trace), status)
        read = set(re.findall(r'/([a-z0-9-]+)\.yaml"', trace.read_text()))
        expected = {f"fork-{number:02}" for number in expected} | {"our-words", "screw-threads"}
        self.assertLessEqual(expected, read)
        self.assertLessEqual(read, expected | just_written)

    def settle(self):
        time.sleep(2.1)  # until the times of files tell what changed
        self.check()
        self.written.clear()

    def test_only_what_a_change_reaches_is_read(self):
        self.settle()
        self.assert_reads(lambda: self.put(3, torque="9.5"), 3)
        self.assert_reads(lambda: self.put(4, torque="9.25", name="cover bolt"), 4)
        # A base, the sheet based on it, and the one that speaks of an entry of another.
        self.assert_reads(lambda: self.put(12, torque="10"), 12, 13, 10)
        self.assert_reads(lambda: self.put(20, torque="10"), 19, 20, 17)
        # A line more, which moves every place on the sheet; a comment; another day of checking.
        self.assert_reads(lambda: self.put(7, allow="notes: [A note more.]"), 7)
        self.assert_reads(lambda: self.put(8, more="# no more\n"), 8)
        self.assert_reads(lambda: self.put(9, on="2026-10-20"), 9)

    def test_a_warning_comes_stays_and_goes(self):
        self.settle()
        self.assert_reads(lambda: self.put(3, torque="90"), 3)  # unlike its peers
        self.assert_reads(lambda: self.put(8, torque="9.5"), 3, 8)  # the figure at fault is judged, and shown again
        self.assert_reads(lambda: self.put(3), 3)

    def test_an_error_is_found_and_mended_by_what_it_reaches(self):
        self.settle()
        self.assert_reads(lambda: self.put(3, torque="5 ± 3"), 3, status=1)
        self.assert_reads(lambda: self.put(8, torque="9.5"), 3, 8, status=1)
        self.assert_reads(lambda: self.put(3), 8)

    def test_every_kind_of_change(self):
        """Those that others may depend on in any way are left to a build of all; the result tells."""
        self.check()
        steps = [
            lambda: self.write("our-words", WORDS.replace("A spring", "A strong spring")),
            lambda: self.write("our-words", WORDS.replace("bolt]", "bolt, set screw]")),
            lambda: self.write("screw-threads", TABLE.replace("36.6", "36.5")),
            lambda: self.write("our-words", WORDS.replace("spring-load", "sprung-load")),  # nobody has it then
            lambda: self.write("our-words", WORDS),
            lambda: self.put(2, caution="spring-laod"),
            lambda: self.put(2),
            lambda: self.put(40),
            lambda: (self.sheets / "fork-40.yaml").rename(self.sheets / "fork-41.yaml"),
            lambda: self.put(41),
            lambda: (self.sheets / "fork-41.yaml").unlink(),
            lambda: (self.sheets / "fork-00.yaml").rename(self.sheets / "a-folder.yaml"),
            lambda: (self.sheets / "a-folder.yaml").rename(self.sheets / "fork-00.yaml"),
            lambda: self.put(10, more="  screw-c: { name: third screw, thread: M6x1, torque: 9 N·m, state: dry }\n"),
            lambda: self.write("fork-10", sheet(10).replace("screw-a:", "screw-z:")),  # fork-13 speaks of it
            lambda: self.write("fork-10", sheet(10).replace("part-number", "formerly: [old-screw], part-number")),
            lambda: self.put(10, torque="four"),
            lambda: self.put(10, name="guard screw", years="2011"),
            lambda: self.put(12, more="  screw-c: { name: third screw, thread: M6x1, torque: 9 N·m, state: dry }\n"),
            lambda: self.put(13, base=11),
            lambda: self.write("fork-12", "sheet: fork-12\nbroken: [\n"),
            lambda: self.put(12),
            lambda: self.put(9, allow="allow: { torque-unlike-peers: It is a special one. }", torque="90"),
            lambda: self.put(8, torque="9.5"),
            lambda: self.put(9, allow="allow: { torque-unlike-peers: It is a special one. }"),  # allows nothing now
            lambda: self.put(9),
            lambda: self.put(9, on="2020-01-02"),  # checked long ago
            lambda: self.put(7, on="2022-01-02"),
            lambda: self.put(9),
        ]
        ends = [(step(), self.check())[1] for step in steps]
        self.assertIn(0, ends)
        self.assertIn(1, ends)

    def test_kept_build_damaged(self):
        self.check()
        [kept] = self.cache.glob("sheaf/*/build")
        self.put(3, torque="9.5")
        self.check()
        for i, damage in enumerate((lambda b: b[:-1], lambda b: b"", lambda b: b[:99] + bytes([b[99] ^ 1]) + b[100:], None)):
            whole = kept.read_bytes()
            kept.unlink()
            if damage:
                kept.write_bytes(damage(whole))
            self.put(3, torque=f"9.{i}")
            self.check()
        older = kept.read_bytes()
        self.put(5, torque="9.5")
        self.check()
        kept.write_bytes(older)  # sound, but of the build before
        self.put(3, torque="9.5")
        self.check()

    def test_random_changes(self):
        draw = random.Random(20261129)
        self.check()
        for _ in range(15):
            for _ in range(draw.choice((1, 1, 1, 2, 3))):
                what = {"torque": draw.choice(("8", "9", "9.5", "10", "90", "900"))}
                if draw.random() < 0.3:
                    what["name"] = draw.choice(("cover bolt", "guard screw"))
                if draw.random() < 0.1:
                    what["allow"] = "allow: { torque-unlike-peers: It is a special one. }"
                if draw.random() < 0.1:
                    what["on"] = draw.choice(("2020-01-02", "2026-11-01"))
                if draw.random() < 0.1:
                    what["more"] = "settings:\n  preload: { name: spring preload, standard: 4 turns, count-from: fully out }\n"
                self.put(draw.randrange(COUNT), **what)
            self.check()


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description="One change after another.")
    parser.add_argument("--build", type=pathlib.Path, default=BUILD)
    arguments, rest = parser.parse_known_args()
    BUILD = arguments.build.resolve()
    unittest.main(argv=sys.argv[:1] + rest)
