#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""Building again: what is kept between builds saves time and changes no byte, whatever befalls it.

    tests/compiler/cli/rebuild.py --build DIR
"""

import argparse
import os
import pathlib
import pty
import re
import select
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import unittest

BUILD = pathlib.Path("build/debug")
SECONDS = 120

SHEET = """sheet: {name}
title: A fork with a few figures
assembly: fork
invented: yes
fits: {{ make: Haldrek, model: Muleback {model}, years: 2011..2015 }}
source: {{ title: Sorvane fork service leaflet 41, edition: 2, year: 2012, page: 5 }}
checked: {{ on: 2026-10-02, by: workshop, against: source }}
settings:
  preload: {{ name: spring preload, standard: {turns} turns, count-from: fully out }}
{more}"""
PAIR = """fasteners:
  cover-screw: { name: cover screw, thread: M6x1, torque: 9 N·m, state: dry }
  cover-bolt: { name: Cover-screw, thread: M6x1, torque: 9 N·m, state: dry }
"""  # two of one name: a warning


class Rebuild(unittest.TestCase):
    def setUp(self):
        self.here = pathlib.Path(tempfile.mkdtemp(prefix="rebuild-"))
        self.addCleanup(shutil.rmtree, self.here, ignore_errors=True)
        self.sheets = self.here / "sheets"
        self.sheets.mkdir()
        for number in range(6):
            self.put(f"fork-{number}", 380 + number)
        self.program = BUILD / "sheafc"
        self.cache = self.here / "cache"
        self.env = {"PATH": "/usr/bin:/bin", "XDG_CACHE_HOME": str(self.cache), "TERM": "dumb", "LC_ALL": "C.UTF-8"}
        self.env |= {k: v for k, v in os.environ.items() if k.endswith("SAN_OPTIONS")}
        self.library = self.here / "fleet.sheaf"

    def put(self, name, model=380, turns="4", more=""):
        (self.sheets / f"{name}.yaml").write_text(
            SHEET.format(name=name, model=model, turns=turns, more=more), "utf-8")

    def settle(self):
        """Times of files long past, so that they alone tell what changed; the inodes' own clock cannot be set."""
        time.sleep(2.1)

    def sheafc(self, *arguments, **env):
        done = subprocess.run([self.program, *map(str, arguments)], cwd=self.here, env=self.env | env,
                              stdin=subprocess.DEVNULL, capture_output=True, text=True, timeout=SECONDS, check=False)
        return done.returncode, done.stderr

    def build(self, *arguments, **env):
        status, said = self.sheafc("build", "sheets", "-o", "fleet.sheaf", *arguments, **env)
        self.assertEqual(status, 0, said)
        return said

    def clean_bytes(self):
        before = self.library.read_bytes() if self.library.exists() else None
        self.assertIn("wrote", self.build("--no-cache"))
        clean = self.library.read_bytes()
        if before is not None:
            self.library.unlink()
            self.library.write_bytes(before)
        return clean

    def kept(self):
        return [path for path in self.cache.rglob("*") if path.is_file()]

    def assert_builds_the_same(self, clean=None):
        clean = clean or self.clean_bytes()
        self.library.write_bytes(b"to be made again")
        self.assertIn("wrote", self.build())
        self.assertEqual(self.library.read_bytes(), clean)

    def test_nothing_changed(self):
        self.assertIn("wrote fleet.sheaf: 6 entries, 6 sheets, 0 warnings", self.build())
        first = self.library.stat()
        self.assertEqual(self.build(), "sheafc: fleet.sheaf is up to date: 6 entries, 6 sheets, 0 warnings\n")
        self.settle()
        for _ in range(2):
            self.assertIn("is up to date", self.build())
        self.assertEqual(self.library.stat().st_ino, first.st_ino)
        self.assertEqual(self.build("--quiet"), "")

    def test_nothing_changed_reads_no_sheet(self):
        self.settle()
        self.build()
        self.assertIn("is up to date", self.build())
        trace = self.here / "trace"
        done = subprocess.run(["strace", "-f", "-e", "trace=open,openat", "-o", trace, self.program, "build", "sheets",
                               "-o", "fleet.sheaf"], cwd=self.here, env=self.env, capture_output=True, text=True,
                              timeout=SECONDS, check=False)
        self.assertIn("is up to date", done.stderr)
        self.assertNotIn(".yaml", trace.read_text())

    def test_touched_but_the_same(self):
        self.build()
        self.settle()
        os.utime(self.sheets / "fork-3.yaml")
        self.assertIn("is up to date", self.build())

    def test_changed_within_one_tick(self):
        """A change that leaves size and times as they were, right after a build."""
        self.put("fork-3", 383, "4")
        self.build()
        state = (self.sheets / "fork-3.yaml").stat()
        self.put("fork-3", 383, "5")
        os.utime(self.sheets / "fork-3.yaml", ns=(state.st_atime_ns, state.st_mtime_ns))
        self.assertIn("wrote", self.build())

    def test_every_kind_of_change(self):
        self.build()
        self.settle()
        changes = {
            "edited": lambda: self.put("fork-3", 383, "7"),
            "added": lambda: self.put("fork-9", 389),
            "removed": lambda: (self.sheets / "fork-1.yaml").unlink(),
            "renamed": lambda: ((self.sheets / "fork-2.yaml").unlink(), self.put("fork-22", 382)),
            "library removed": self.library.unlink,
            "library overwritten": lambda: self.library.write_bytes(b"no library"),
        }
        for name, change in changes.items():
            with self.subTest(name):
                change()
                self.assertIn("wrote", self.build())
                self.assertEqual(self.library.read_bytes(), self.clean_bytes())

    def test_another_day(self):
        self.build(SOURCE_DATE_EPOCH="1790000000")
        self.assertIn("is up to date", self.build(SOURCE_DATE_EPOCH="1790000000"))
        self.assertIn("wrote", self.build(SOURCE_DATE_EPOCH="1790200000"))

    def test_warnings_are_said_again(self):
        self.put("fork-3", 383, more=PAIR)
        said = self.build()
        self.assertIn("[names-nearly-equal]", said)
        self.assertEqual(self.build(), said.replace("wrote fleet.sheaf", "fleet.sheaf is up to date"))

    def test_library_built_against(self):
        self.build()
        shop = self.here / "shop"
        shop.mkdir()
        (shop / "ours.yaml").write_text("sheet: ours\ntitle: Our fork\nbased-on: fork-3\n"
                                        "fits: { make: Haldrek, model: Muleback 900, years: 2016.. }\n", "utf-8")
        build = ("build", "shop", "--with", "fleet.sheaf", "-o", "shop.sheaf")
        self.assertIn("wrote", self.sheafc(*build)[1])
        self.assertIn("up to date", self.sheafc(*build)[1])
        self.put("fork-3", 383, "6")
        self.build()
        self.assertIn("wrote", self.sheafc(*build)[1])

    def test_cache_deleted(self):
        self.build()
        shutil.rmtree(self.cache)
        self.assert_builds_the_same()

    def test_cache_partly_deleted(self):
        self.build()
        clean = self.library.read_bytes()
        for path in self.kept():
            self.build()
            path.unlink(missing_ok=True)
            self.assert_builds_the_same(clean)

    def assert_an_edit_builds_right(self):
        """To and fro between two states of one sheet, whose libraries are known."""
        self.state = 1 - self.state
        self.put("fork-3", 383, "47"[self.state])
        self.assertIn("wrote", self.build())
        self.assertEqual(self.library.read_bytes(), self.clean[self.state])

    def test_cache_corrupted(self):
        """Every kept file in turn: a byte changed here and there, cut, emptied, doubled, replaced by a folder. Parts of
        the index are wanted when the library is gone, the rest when a sheet changed."""
        self.state = 0
        self.clean = [(self.put("fork-3", 383, turns), self.clean_bytes())[1] for turns in "47"]
        self.put("fork-3", 383, "4")
        self.build()
        self.assertEqual(len(self.kept()), 5)
        for name in ("*.shard", "build", "facts", "library", "stamp"):
            again = self.assert_an_edit_builds_right
            if name == "*.shard":
                again = lambda: self.assert_builds_the_same(self.clean[self.state])
            for damage in (lambda b: b[:len(b) // 2] + bytes([b[len(b) // 2] ^ 1]) + b[len(b) // 2 + 1:],
                           lambda b: bytes([b[0] ^ 128]) + b[1:], lambda b: b[:-1], lambda b: b"", lambda b: b + b):
                [path] = self.cache.glob(f"sheaf/*/{name}")
                data = damage(path.read_bytes())
                path.unlink()
                path.write_bytes(data)
                again()
            [path] = self.cache.glob(f"sheaf/*/{name}")
            path.unlink()
            path.mkdir()
            again()
            if path.is_dir():
                path.rmdir()
            again()

    def test_cache_of_another_program(self):
        """Older or newer: told apart by its own bytes, of which one more at the end changes nothing else."""
        self.build()
        other = self.here / "sheafc"
        shutil.copy2(self.program, other)
        with open(other, "ab") as file:
            file.write(b"\0")
        ours, self.program = self.program, other
        self.assertIn("wrote", self.build())
        self.assert_builds_the_same()
        self.program = ours
        self.assertIn("wrote", self.build())
        self.assert_builds_the_same()

    def test_cache_that_cannot_be(self):
        for home in ("/dev/null", "/proc/nowhere", "", "relative"):
            with self.subTest(home):
                self.library.unlink(missing_ok=True)
                self.assertIn("wrote", self.build(XDG_CACHE_HOME=home))
                self.assertFalse((self.here / "relative").exists())

    def test_cache_is_the_owners_alone_and_forgets(self):
        self.build()
        self.assertEqual((self.cache / "sheaf").stat().st_mode & 0o777, 0o700)
        count = len(self.kept())
        self.put("fork-3", 383, "7")
        self.build()
        self.assertEqual(len(self.kept()), count)  # the shard of before is gone
        self.library.unlink()
        self.sheafc("build", "sheets", "-o", "other.sheaf")
        self.assertEqual(len(list((self.cache / "sheaf").iterdir())), 1)  # and so is all of a library that is no more

    def watch(self):
        process = subprocess.Popen([self.program, "build", "sheets", "-o", "fleet.sheaf", "--watch"], cwd=self.here,
                                   env=self.env, stdin=subprocess.DEVNULL, stderr=subprocess.PIPE)
        self.addCleanup(process.kill)
        self.addCleanup(process.stderr.close)
        return process

    def read_until(self, process, text):
        said = b""
        end = time.monotonic() + SECONDS
        while text.encode() not in said:
            ready = select.select([process.stderr], [], [], max(0, end - time.monotonic()))[0]
            more = os.read(process.stderr.fileno(), 1 << 16) if ready else b""
            self.assertTrue(more, f"waited for {text!r}, got {said!r}")
            said += more
        return said.decode()

    def test_watch(self):
        self.put("fork-3", 383, more=PAIR)
        process = self.watch()
        self.assertIn("[names-nearly-equal]", self.read_until(process, "1 warning\n"))
        self.put("fork-1", 381, "four")
        said = self.read_until(process, "is not written\n")
        self.assertIn("fork-1.yaml:9:", said)
        self.assertNotIn("names-nearly-equal", said)  # said before
        self.put("fork-1", 381, "6")
        self.assertEqual(self.read_until(process, "warning\n"),
                         "sheafc: wrote fleet.sheaf: 8 entries, 6 sheets, 1 warning\n")
        below = self.sheets / "below"
        below.mkdir()
        self.read_until(process, "warning\n")
        (below / "fork-8.yaml").write_text(SHEET.format(name="fork-8", model=388, turns=3, more=""), "utf-8")
        self.assertIn("9 entries, 7 sheets", self.read_until(process, "7 sheets, 1 warning\n"))
        process.send_signal(signal.SIGINT)
        self.assertEqual(process.wait(SECONDS), -signal.SIGINT)
        made = self.library.read_bytes()
        self.assertEqual(made, self.clean_bytes())
        self.assertEqual([path.name for path in self.here.iterdir() if "build" in path.name], [])

    def on_a_terminal(self):
        ours, terminal = pty.openpty()
        process = subprocess.Popen([self.program, "build", "sheets", "-o", "fleet.sheaf"], cwd=self.here, env=self.env,
                                   stdin=subprocess.DEVNULL, stderr=terminal)
        os.close(terminal)
        said = b""
        try:
            while piece := os.read(ours, 1 << 16):
                said += piece
        except OSError:
            pass  # the terminal's other end is closed
        os.close(ours)
        self.assertEqual(process.wait(SECONDS), 0)
        return said

    def test_progress_on_a_terminal_alone(self):
        begun = time.monotonic()
        said = self.on_a_terminal()
        if time.monotonic() - begun < 1:  # too short to need it
            self.assertNotIn(b"\x1b", said)
        sheets = 50
        while True:  # until it takes longer than a second here
            sheets *= 3
            for number in range(6, sheets):
                self.put(f"fork-{number}", 380 + number)
            begun = time.monotonic()
            said = self.on_a_terminal()
            if time.monotonic() - begun > 1.5:
                break
        self.assertRegex(said.decode(), r"\r\x1b\[Ksheafc: (reading|writing|checking|linking|putting)")
        shown = re.sub(r"(^|\n)[^\n]*\x1b\[K", r"\1", said.decode().replace("\r\n", "\n"))  # as it stands in the end
        self.assertEqual(shown, f"sheafc: wrote fleet.sheaf: {sheets} entries, {sheets} sheets, 0 warnings\n")
        self.library.unlink()
        self.assertNotIn("\x1b", self.build())


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description="Building again.")
    parser.add_argument("--build", type=pathlib.Path, default=BUILD)
    arguments, rest = parser.parse_known_args()
    BUILD = arguments.build.resolve()
    unittest.main(argv=sys.argv[:1] + rest)
