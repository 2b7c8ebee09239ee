#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""The prompt as its user meets it: a terminal (a pty), keys typed one by one, and what comes on the screen.

    tests/prompt.py [--build DIR] [unittest arguments]
"""

import fcntl
import os
import pathlib
import pty
import re
import select
import shutil
import signal
import struct
import sys
import tempfile
import termios
import time
import unittest

ROOT = pathlib.Path(__file__).resolve().parent.parent
BUILD = ROOT / "build" / "debug"
SECONDS = 30


class Terminal:
    """sheaf in a terminal of so many columns."""

    def __init__(self, home, columns=80, arguments=(), **variables):
        environment = {
            "PATH": os.environ["PATH"],
            "HOME": str(home),
            "XDG_STATE_HOME": str(home / "state"),
            "SHEAF_LIBRARY": str(BUILD / "orrindale.sheaf"),
            "TERM": "xterm",
            "LC_ALL": "C.UTF-8",
            "NO_COLOR": "1",
            **variables,
        }
        environment.update({k: v for k, v in os.environ.items() if k.endswith("SAN_OPTIONS")})
        # The line editor compares what is on the screen by memcmp with a length beyond its own buffer, and ends at
        # the first difference: its matter, and harmless.
        environment["ASAN_OPTIONS"] = environment.get("ASAN_OPTIONS", "") + ":strict_memcmp=0"
        self.process, self.keys = pty.fork()
        if self.process == 0:
            os.execve(BUILD / "sheaf", ["sheaf", *arguments], environment)
        fcntl.ioctl(self.keys, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
        self.screen = ""
        self.status = None

    def read(self, seconds):
        ready, _, _ = select.select([self.keys], [], [], seconds)
        if not ready:
            return False
        try:
            got = os.read(self.keys, 65536)
        except OSError:  # the other end is gone
            return False
        self.screen += got.decode("utf-8", "replace").replace("\u00a0", " ")
        return bool(got)

    def wait_for(self, pattern):
        """What came on the screen up to the pattern, which is then behind us."""
        end = time.monotonic() + SECONDS
        while time.monotonic() < end:
            found = re.search(pattern, self.screen)
            if found:
                seen, self.screen = self.screen[: found.end()], self.screen[found.end():]
                return seen
            self.read(0.2)
        raise AssertionError(f"{pattern!r} never came; on the screen:\n{self.screen}")

    def type(self, text):
        os.write(self.keys, text.encode())

    def ended(self):
        """The status with which it ended."""
        end = time.monotonic() + SECONDS
        while time.monotonic() < end:
            self.read(0.05)
            process, status = os.waitpid(self.process, os.WNOHANG)
            if process:
                self.status = os.waitstatus_to_exitcode(status)
                while self.read(0.05):
                    pass
                return self.status
        raise AssertionError("it never ended; on the screen:\n" + self.screen)

    def close(self):
        if self.status is None:
            os.kill(self.process, signal.SIGKILL)
            os.waitpid(self.process, 0)
        os.close(self.keys)


class Prompt(unittest.TestCase):
    def setUp(self):
        self.home = pathlib.Path(tempfile.mkdtemp(prefix="prompt-"))
        self.addCleanup(shutil.rmtree, self.home, ignore_errors=True)

    def open(self, **settings):
        terminal = Terminal(self.home, **settings)
        self.addCleanup(terminal.close)
        terminal.wait_for(r"sheaf> ")
        return terminal

    def test_words_are_offered_and_figures_shown_while_typing(self):
        terminal = self.open()
        terminal.type("p")
        self.assertIn("plug", terminal.wait_for(r"plug"))
        terminal.type("lug top muleback 2013")
        terminal.wait_for(r"28 N·m.*fork top plug")
        terminal.type("\r")
        terminal.wait_for(r"address +sorvane-41-rod/top-plug")

    def test_the_answer_is_written_where_nothing_stands_any_more(self):
        terminal = self.open()
        terminal.type("top plug muleback 2013")
        terminal.wait_for(r"28 N·m.*fork top plug")
        while terminal.read(0.3):
            pass
        terminal.screen = ""
        terminal.type("\r")
        seen = terminal.wait_for(r"address")
        erased = seen.find("\x1b[J")
        self.assertTrue(0 <= erased < seen.index("N·m"), seen)

    def test_the_tab_key_completes(self):
        terminal = self.open()
        terminal.type("thermost\t")
        terminal.wait_for(r"thermostat")

    def test_ctrl_c_gives_up_the_line_and_not_the_program(self):
        terminal = self.open()
        terminal.type("top plug")
        terminal.wait_for("plug")
        terminal.type("\x03")
        terminal.wait_for(r"sheaf> ")
        terminal.type("drain plug packlet\r")
        terminal.wait_for(r"address +packlet-engine-service/drain-plug")
        terminal.wait_for(r"sheaf> ")  # before it, the terminal is not the prompt's and swallows the key
        terminal.type("\x04")
        self.assertEqual(terminal.ended(), 0)

    def test_ctrl_d_leaves_and_the_history_is_kept_for_its_user_alone(self):
        terminal = self.open()
        terminal.type("top plug muleback 2013\r")
        terminal.wait_for(r"address")
        terminal.wait_for(r"sheaf> ")
        terminal.type("\x04")
        self.assertEqual(terminal.ended(), 0)
        history = self.home / "state" / "sheaf" / "history"
        self.assertEqual(history.read_text("utf-8"), "top plug muleback 2013\n")
        self.assertEqual(history.parent.stat().st_mode & 0o077, 0)
        again = self.open()
        again.type("\x1b[A")
        again.wait_for("top plug muleback 2013")

    def test_other_commands_work_there(self):
        terminal = self.open()
        terminal.type("convert 22 N·m to lbf·ft\r")
        terminal.wait_for(r"16\.2 lbf·ft")

    def test_a_narrow_terminal_shows_the_figure_whole(self):
        terminal = self.open(columns=36)
        terminal.type("top plug mule 2013")
        terminal.wait_for(r"28 N·m")
        terminal.type("\r")
        terminal.wait_for(r"sorvane-41-rod")

    def test_a_dumb_terminal_gets_no_movements(self):
        terminal = self.open(TERM="dumb", NO_COLOR="")
        terminal.type("top plug muleback 2013\r")
        seen = terminal.wait_for(r"address")
        self.assertIn("28 N·m", seen)
        self.assertNotIn("\x1b", seen)

    def test_plain_ascii_where_the_locale_has_no_more(self):
        terminal = self.open(LC_ALL="C")
        terminal.type("top plug muleback 2013\r")
        seen = terminal.wait_for(r"address")
        self.assertRegex(seen, r"28 N.m")
        self.assertTrue(seen.isascii(), seen)

    def test_a_line_of_nonsense_or_of_great_length_is_only_a_question(self):
        terminal = self.open()
        terminal.type("x" * 3000 + "\r")
        terminal.wait_for(r"sheaf> ")
        terminal.type("\"'*()[]{}<>;|&\\\r")
        terminal.wait_for(r"sheaf> ")
        terminal.type("\x04")
        self.assertEqual(terminal.ended(), 0)


if __name__ == "__main__":
    if "--build" in sys.argv:
        at = sys.argv.index("--build")
        BUILD = pathlib.Path(sys.argv[at + 1]).resolve()
        del sys.argv[at : at + 2]
    unittest.main()
