#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""How both programs behave when the world fails them: one clear line, the right status, nothing half-written.

Files that are missing, cut short, foreign or damaged; folders that may not be read or written (tried as an
unprivileged user, since root is never refused); a full disk; a reader that has gone away. Statuses are 0 done,
1 nothing found or sheets at fault, 2 the world or the usage.

    tests/behaviour.py [--build DIR] [unittest arguments]
"""

import os
import pathlib
import random
import resource
import shutil
import sqlite3
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parent.parent
BUILD = ROOT / "build" / "debug"
QUESTION = ["find", "top", "plug", "muleback", "2013"]
NOBODY = 65534
SECONDS = 60

GOOD_SHEET = """sheet: plain-fork
title: A fork with one figure
assembly: fork
invented: yes
fits: { make: Haldrek, model: Muleback 380, years: 2011..2015 }
identify: [The casting reads S41.]
source: { title: Sorvane fork service leaflet 41, edition: 2, year: 2012, page: 5 }
checked: { on: 2026-10-02, by: workshop, against: source }
settings:
  preload: { name: spring preload, standard: 4 turns, range: 0..9 turns, count-from: fully out }
"""


class Behaviour(unittest.TestCase):
    """Works in a folder of its own that everybody may enter, on copies of the programs and the library."""

    def setUp(self):
        self.here = pathlib.Path(tempfile.mkdtemp(prefix="behaviour-"))
        self.addCleanup(shutil.rmtree, self.here, ignore_errors=True)
        self.here.chmod(0o755)
        self.bin = self.here / "bin"
        self.bin.mkdir()
        for program in ("sheaf", "sheafc"):
            shutil.copy2(BUILD / program, self.bin / program)
        self.library = self.here / "demo.sheaf"
        shutil.copyfile(BUILD / "orrindale.sheaf", self.library)
        self.sheets = self.here / "sheets"
        self.sheets.mkdir()
        (self.sheets / "plain-fork.yaml").write_text(GOOD_SHEET, "utf-8")

    def run_program(self, program, *arguments, env=None, as_nobody=False, **options):
        settings = {k: v for k, v in os.environ.items() if k.endswith("SAN_OPTIONS")}
        settings |= {"PATH": "/usr/bin:/bin", "HOME": str(self.here), "LC_ALL": "C.UTF-8", "TERM": "dumb"}
        settings |= env or {}
        if as_nobody and os.geteuid() == 0:
            options |= {"user": NOBODY, "group": NOBODY, "extra_groups": []}
        options.setdefault("stdout", subprocess.PIPE)
        options.setdefault("stderr", subprocess.PIPE)
        return subprocess.run([str(self.bin / program), *map(str, arguments)], cwd=self.here, env=settings,
                              stdin=subprocess.DEVNULL, timeout=SECONDS, check=False, **options)

    def sheaf(self, *arguments, **options):
        return self.run_program("sheaf", *arguments, **options)

    def sheafc(self, *arguments, **options):
        return self.run_program("sheafc", *arguments, **options)

    def ask(self, library, **options):
        return self.sheaf("--library", library, *QUESTION, **options)

    def assert_failed_clearly(self, done, program, naming=()):
        """Status 2 and one line a person can act on; hints may follow, indented."""
        told = done.stderr.decode("utf-8")
        self.assertEqual(done.returncode, 2, told)
        first, *hints = told.splitlines() or [""]
        self.assertTrue(first.startswith(f"{program}: error: "), told)
        self.assertTrue(all(hint.startswith("  ") for hint in hints), told)
        for word in ("terminate", "what()", "std::", "Xapian", "SQLITE", "sqlite3_", "errno", "Sanitizer"):
            self.assertNotIn(word, told)
        for name in map(str, naming):
            self.assertIn(name, told)
        self.assertFalse(done.stdout, "an error leaves standard output empty")

    def everything_here(self):
        kept = self.here / ".cache"  # for the next build; tests/compiler/cli/rebuild.py looks at it
        return {path: path.read_bytes() for path in self.here.rglob("*")
                if path.is_file() and kept not in path.parents}


class LibrariesThatCannotBeRead(Behaviour):
    def refused(self, content):
        broken = self.here / "broken.sheaf"
        broken.write_bytes(content)
        self.assert_failed_clearly(self.ask(broken), "sheaf", naming=[broken.name])

    def test_whole_library_answers(self):
        self.assertEqual(self.ask(self.library).returncode, 0)

    def test_missing(self):
        self.assert_failed_clearly(self.ask(self.here / "none.sheaf"), "sheaf", naming=["none.sheaf"])

    def test_none_anywhere_says_how_to_make_one(self):
        self.assert_failed_clearly(self.sheaf(*QUESTION), "sheaf", naming=["sheafc build"])

    def test_truncated(self):
        whole = self.library.read_bytes()
        for size in (0, 1, 15, 16, 100, 512, 4096, len(whole) // 2, len(whole) - 4096, len(whole) - 1):
            with self.subTest(size=size):
                self.refused(whole[:size])

    def test_foreign(self):
        size = self.library.stat().st_size
        for name, content in {"text": b"top plug: 28 N m\n" * 500, "picture": b"\x89PNG\r\n\x1a\n" + bytes(5000),
                              "zeros": bytes(size), "noise": random.Random(41).randbytes(size)}.items():
            with self.subTest(name):
                self.refused(content)

    def test_someone_elses_database(self):
        for statement in ("VACUUM", "CREATE TABLE entry (address TEXT)"):
            with self.subTest(statement):
                path = self.here / "other.sheaf"
                path.unlink(missing_ok=True)
                with sqlite3.connect(path) as database:
                    database.execute(statement)
                database.close()
                self.assert_failed_clearly(self.ask(path), "sheaf", naming=[path.name])

    def test_overwritten_head_and_tail(self):
        whole = self.library.read_bytes()
        self.refused(bytes(100) + whole[100:])
        self.refused(whole[:-64] + bytes(64))

    def test_newer_and_older_name_both_formats(self):
        whole = self.library.read_bytes()
        own = int.from_bytes(whole[-20:-16], "little")
        for other in (own + 1, 4_000_000_000, own - 1):
            with self.subTest(format=other):
                path = self.here / "other.sheaf"
                path.write_bytes(whole[:-20] + other.to_bytes(4, "little") + whole[-16:])
                self.assert_failed_clearly(self.ask(path), "sheaf", [path.name, f"format {other}", f"format {own}"])

    def test_not_a_file(self):
        fifo = self.here / "pipe.sheaf"
        os.mkfifo(fifo)
        for path in (self.here, fifo, "/dev/null", "/dev/zero"):
            with self.subTest(path=path):
                self.assert_failed_clearly(self.ask(path), "sheaf", naming=[path])

    def test_unreadable(self):
        self.library.chmod(0)
        self.assert_failed_clearly(self.ask(self.library, as_nobody=True), "sheaf", naming=[self.library.name])

    def test_read_only_folder_is_enough_to_ask(self):
        self.library.chmod(0o444)
        self.here.chmod(0o555)
        self.addCleanup(self.here.chmod, 0o755)
        self.assertEqual(self.ask(self.library, as_nobody=True).returncode, 0)


class SheetsThatCannotBeCompiled(Behaviour):
    def build(self, folder=None, output=None, **options):
        return self.sheafc("build", folder or self.sheets, "-o", output or self.library, **options)

    def refused(self, naming=(), status=2, **options):
        """The build fails, and every file is as it was."""
        before = self.everything_here()
        done = self.build(**options)
        if status == 2:
            self.assert_failed_clearly(done, "sheafc", naming)
        else:
            self.assertEqual(done.returncode, status, done.stderr)
        self.assertEqual(self.everything_here(), before)

    def test_good_sheets_replace_the_library(self):
        before = self.library.read_bytes()
        done = self.build()
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assertNotEqual(self.library.read_bytes(), before)
        self.assertEqual({path.name for path in self.here.iterdir()} - {".cache"}, {"bin", "demo.sheaf", "sheets"})

    def test_sheets_at_fault_leave_the_old_library(self):
        (self.sheets / "worse.yaml").write_text("sheet: worse\ntitle: [\n", "utf-8")
        self.refused(status=1)

    def test_missing_folder(self):
        self.refused(folder=self.here / "none", naming=["none"])

    def test_empty_folder(self):
        empty = self.here / "empty"
        empty.mkdir()
        self.refused(folder=empty, naming=["empty"])

    def test_unreadable_folder_and_sheet(self):
        for path in (self.sheets, self.sheets / "plain-fork.yaml"):
            with self.subTest(path=path.name):
                mode = path.stat().st_mode
                path.chmod(0)
                done = self.build(output=self.here / "new.sheaf", as_nobody=True)
                path.chmod(mode)
                self.assert_failed_clearly(done, "sheafc", naming=[path.name])

    def test_output_where_nothing_may_be_written(self):
        self.here.chmod(0o555)
        self.addCleanup(self.here.chmod, 0o755)
        self.refused(as_nobody=True, naming=[self.here])

    def test_output_in_no_folder_or_on_a_folder(self):
        self.refused(output=self.here / "none" / "new.sheaf", naming=["none"])
        self.refused(output=self.sheets, naming=["sheets"])

    def test_full_disk(self):
        def limit():
            resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))

        # Xapian's compaction does not free its tables when a write fails; the program ends then.
        unwatched = {"ASAN_OPTIONS": os.environ.get("ASAN_OPTIONS", "") + ":detect_leaks=0"}
        for size in (0, 4096, 16384):
            with self.subTest(size=size):
                self.refused(preexec_fn=limit, naming=[self.library.name], env=unwatched)

    def test_closed_standard_streams_do_not_end_up_in_the_library(self):
        def close_streams():
            os.close(1)
            os.close(2)

        self.build(preexec_fn=close_streams)
        done = self.sheaf("--library", self.library, "about")
        self.assertEqual(done.returncode, 0, done.stderr)


class ReadersThatGoAway(Behaviour):
    def commands(self):
        yield self.sheaf, ["--library", self.library, *QUESTION]
        yield self.sheaf, ["--library", self.library, "about"]
        yield self.sheaf, ["convert", "35 N·m", "to", "lbf·ft"]
        yield self.sheaf, ["--help"]
        yield self.sheaf, ["--version"]
        yield self.sheafc, ["check", "--json", self.sheets_at_fault()]
        yield self.sheafc, ["--help"]
        yield self.sheafc, ["--version"]

    def sheets_at_fault(self):
        folder = self.here / "faults"
        folder.mkdir(exist_ok=True)
        (folder / "worse.yaml").write_text("sheet: worse\ntitle: [\n", "utf-8")
        return folder

    def test_full_device(self):
        for program, arguments in self.commands():
            with self.subTest(arguments=arguments), open("/dev/full", "wb") as full:
                done = program(*arguments, stdout=full)
                self.assertEqual(done.returncode, 2, done.stderr)
                self.assertEqual(len(done.stderr.splitlines()), 1, done.stderr)

    def test_closed_pipe_is_a_quiet_end(self):
        for program, arguments in self.commands():
            with self.subTest(arguments=arguments):
                reader, writer = os.pipe()
                os.close(reader)
                done = program(*arguments, stdout=writer)
                os.close(writer)
                self.assertEqual(done.stderr, b"")
                self.assertIn(done.returncode, (0, 1) if "check" in arguments else (0,))

    def test_errors_that_cannot_be_told_keep_their_status(self):
        with open("/dev/full", "wb") as full:
            self.assertEqual(self.ask(self.here / "none.sheaf", stderr=full).returncode, 2)


class Surroundings(Behaviour):
    def test_locale_and_home_do_not_matter(self):
        usual = self.ask(self.library).stdout
        self.assertTrue(usual)
        for env in ({"LC_ALL": "C"}, {"LC_ALL": "de_DE.UTF-8"}, {"LC_ALL": "no-such"}, {"HOME": "/nonexistent"},
                    {"HOME": ""}, {"NO_COLOR": "1"}):
            with self.subTest(env=env):
                self.assertEqual(self.ask(self.library, env=env).stdout, usual)

    def test_folders_with_spaces_and_other_letters(self):
        folder = self.here / "vår verkstad, två"
        folder.mkdir()
        output = folder / "our own.sheaf"
        done = self.sheafc("build", self.sheets, "-o", output)
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assertEqual(self.sheaf("--library", output, "about").returncode, 0)

    def test_mistyped_commands(self):
        for program, typed, meant in ((self.sheaf, "shwo", "show"), (self.sheafc, "biuld", "build")):
            with self.subTest(typed):
                done = program(typed)
                self.assert_failed_clearly(done, pathlib.Path(done.args[0]).name, naming=[typed, meant])

    def test_wrong_usage(self):
        for program, arguments in ((self.sheaf, ["find", "--no-such-flag"]), (self.sheaf, ["show"]),
                                   (self.sheafc, ["build"]), (self.sheafc, ["check", "--no-such-flag"])):
            with self.subTest(arguments=arguments):
                done = program(*arguments)
                self.assert_failed_clearly(done, pathlib.Path(done.args[0]).name)

    def test_nothing_found_is_no_error(self):
        done = self.sheaf("--library", self.library, "find", "zeppelin", "mooring", "ring")
        self.assertEqual(done.returncode, 1, done.stderr)


if __name__ == "__main__":
    if "--build" in sys.argv:
        at = sys.argv.index("--build")
        BUILD = pathlib.Path(sys.argv[at + 1]).resolve()
        del sys.argv[at:at + 2]
    unittest.main()
