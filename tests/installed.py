#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""Installed like any tool: into an empty prefix and as a Debian package; manual pages and completions hold.

    tests/installed.py [--build DIR] [unittest arguments]
"""

import argparse
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parent.parent
BUILD = ROOT / "build" / "debug"
QUESTION = ["find", "top", "plug", "muleback", "2013"]
PROGRAMS = ("sheaf", "sheafc")


def run(*command, **options):
    done = subprocess.run([str(word) for word in command], stdin=subprocess.DEVNULL, capture_output=True, text=True,
                          check=False, timeout=300, **options)
    return done.returncode, done.stdout, done.stderr


def said(*command, **options):
    status, out, err = run(*command, **options)
    assert status == 0, f"{command}: {status}\n{out}{err}"
    return out


class Installed(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.here = pathlib.Path(tempfile.mkdtemp(prefix="installed-"))
        cls.prefix = cls.here / "prefix"
        said("cmake", "--install", BUILD, "--prefix", cls.prefix)
        cls.env = {"PATH": "/usr/bin:/bin", "HOME": str(cls.here), "LC_ALL": "C.UTF-8", "TERM": "dumb"}
        cls.env |= {k: v for k, v in os.environ.items() if k.endswith("SAN_OPTIONS")}

    @classmethod
    def tearDownClass(cls):
        shutil.rmtree(cls.here)

    def program(self, name, *arguments):
        return said(self.prefix / "bin" / name, *arguments, env=self.env, cwd=self.here)

    def test_answers_from_installed_files_alone(self):
        trace = self.here / "trace"
        answer = said("strace", "-f", "-e", "trace=open,openat,execve", "-o", trace, self.prefix / "bin" / "sheaf",
                      *QUESTION, env=self.env, cwd=self.here)
        self.assertIn("28\u00a0N·m", answer)
        opened = trace.read_text()
        self.assertIn(str(self.prefix / "share/sheaf/orrindale.sheaf"), opened)
        for place in (str(BUILD), str(ROOT / "specs-yaml")):
            self.assertNotIn(f'"{place}', opened)

    def test_about_says_where_it_found_the_library(self):
        self.assertIn(str(self.prefix / "share/sheaf"), self.program("sheaf", "about", "--verify"))

    def test_compiles(self):
        again = self.here / "made" / "orrindale.sheaf"
        again.parent.mkdir()
        self.program("sheafc", "build", ROOT / "specs-yaml", "-o", again)
        self.assertEqual(again.read_bytes(), (self.prefix / "share/sheaf/orrindale.sheaf").read_bytes())

    def test_everything_stands_where_it_belongs(self):
        found = sorted(str(path.relative_to(self.prefix)) for path in self.prefix.rglob("*") if path.is_file())
        wanted = ["bin/sheaf", "bin/sheafc", "share/bash-completion/completions/sheaf",
                  "share/bash-completion/completions/sheafc", "share/doc/sheaf/copyright",
                  "share/fish/vendor_completions.d/sheaf.fish", "share/fish/vendor_completions.d/sheafc.fish",
                  "share/man/man1/sheaf.1", "share/man/man1/sheafc.1", "share/sheaf/orrindale.sheaf",
                  "share/zsh/vendor-completions/_sheaf", "share/zsh/vendor-completions/_sheafc"]
        self.assertEqual(found, wanted)

    def test_manual_pages_are_sound(self):
        for name in PROGRAMS:
            page = self.prefix / f"share/man/man1/{name}.1"
            with self.subTest(name):
                self.assertEqual(run("mandoc", "-T", "lint", "-W", "warning", page)[:2], (0, ""))
                text = said("mandoc", "-T", "utf8", page)
                text = re.sub(".\b", "", text)
                for section in ("NAME", "SYNOPSIS", "COMMANDS", "EXIT STATUS", "ENVIRONMENT", "FILES", "SEE ALSO"):
                    self.assertIn(f"\n{section}\n", text)

    def test_manual_pages_say_what_the_help_says(self):
        """Every command and every flag of the help, and no other."""
        for name in PROGRAMS:
            page = re.sub(".\b", "", said("mandoc", "-T", "utf8", "-O", "width=500",
                                          self.prefix / f"share/man/man1/{name}.1"))
            listed = re.split(r"ommands:\n", self.program(name, "--help"))[1].split("\n\n")[0]
            commands = re.findall(r"^  ([a-z]+) ", listed, re.MULTILINE)
            sections = re.split(r"^   (\w+)$", page.split("\nCOMMANDS\n")[1].split("\nEXIT STATUS\n")[0],
                                flags=re.MULTILINE)
            self.assertEqual(sections[1::2], commands)
            for command, text in zip(sections[1::2], sections[2::2]):
                helped = set(re.findall(r"^\s+(?:-\w, ?)?(--[a-z-]+)", self.program(name, command, "--help"), re.MULTILINE))
                paged = set(re.findall(r"^       (?:-\w, )?(--[a-z-]+)", text, re.MULTILINE))
                with self.subTest(f"{name} {command}"):
                    self.assertTrue(helped)
                    self.assertEqual(paged, helped)

    def completed(self, name, *words):
        """What bash offers for the last of the words."""
        script = ('source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); compopt() { :; }; _"$1"; '
                  'printf "%s\\n" "${COMPREPLY[@]}"')
        return said("bash", "-c", script, "bash", self.prefix / "share/bash-completion/completions" / name, name,
                    *words, cwd=self.here).split("\n")[:-1]

    def test_completions_in_bash(self):
        (self.here / "a library.sheaf").touch()
        for words, offered in {
            ("sheaf", "fi"): ["find"],
            ("sheaf", "about", "--v"): ["--verify"],
            ("sheaf", "find", "--color", "al"): ["always"],
            ("sheaf", "find", "--kind", "fa"): ["fastener"],
            ("sheaf", "find", "--library", "a"): ["a library.sheaf"],
            ("sheaf", "convert", "35", "N·m", "to", "lbf·"): ["lbf·ft", "lbf·in"],
            ("sheaf", "convert", "12", "fl oz", "imp"): None,
            ("sheaf", "dump", "--csv", "fi"): ["fits", "fields"],
            ("sheaf", "help", "wr"): ["wrench"],
            ("sheaf", "--vers"): ["--version"],
            ("sheafc", "bu"): ["build"],
            ("sheafc", "build", "--wat"): ["--watch"],
            ("sheafc", "explain", "torque-over-p"): ["torque-over-proof-load"],
        }.items():
            with self.subTest(words):
                got = self.completed(words[0], *words[1:])
                if offered is None:
                    self.assertIn("imp fl oz", got)
                else:
                    self.assertEqual(sorted(got), sorted(offered))

    def test_completions_parse_in_their_shells(self):
        for name in PROGRAMS:
            said("bash", "-n", self.prefix / "share/bash-completion/completions" / name)
            said("zsh", "-n", self.prefix / "share/zsh/vendor-completions" / f"_{name}")
            said("fish", "--no-execute", self.prefix / "share/fish/vendor_completions.d" / f"{name}.fish")
        fish = self.prefix / "share/fish/vendor_completions.d/sheaf.fish"
        offered = said("fish", "--no-config", "-c", f"source {fish}; complete -C 'sheaf find --kind fas'", env=self.env)
        self.assertEqual(offered.split("\t")[0], "fastener")

    def test_versions_name_formats_and_libraries(self):
        for name, libraries in (("sheaf", "SQLite Xapian"), ("sheafc", "SQLite Xapian libyaml yaml-cpp")):
            first, second = self.program(name, "--version").splitlines()
            self.assertRegex(first, rf"^{name} \d+\.\d+\.\d+$")
            self.assertRegex(second, r"^library format \d+, " + ", ".join(rf"{one} [\d.]+" for one in libraries.split()))

    def test_debian_package(self):
        work = self.here / "package"
        said("cpack", "-G", "DEB", "-B", work, cwd=BUILD)
        package, = work.glob("*.deb")
        self.assertRegex(package.name, r"^sheaf_\d+\.\d+\.\d+_\w+\.deb$")
        depends = said("dpkg-deb", "--field", package, "Depends")
        for library in ("libc6", "libxapian30", "libyaml-0-2", "libyaml-cpp"):
            self.assertIn(library, depends)
        root = self.here / "root"
        said("dpkg-deb", "--extract", package, root)
        answer = said(root / "usr/bin/sheaf", *QUESTION, env=self.env, cwd=self.here)
        self.assertIn("28\u00a0N·m", answer)
        self.assertTrue((root / "usr/share/man/man1/sheaf.1").exists())


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description="Installed like any tool.")
    parser.add_argument("--build", type=pathlib.Path, default=BUILD)
    arguments, rest = parser.parse_known_args()
    BUILD = arguments.build.resolve()
    unittest.main(argv=sys.argv[:1] + rest)
