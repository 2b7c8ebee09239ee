#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""Documents that must be true: what README.md shows on the terminal, and pages that a program makes.

In a ```console block of README.md, "$ " begins a command and "> " continues it; what follows is its standard output,
and a line "..." stands for any lines. No-break spaces may be written as spaces. Commands run in one empty folder, with
the demonstration library.

    tests/readme.py --build DIR
"""

import argparse
import os
import pathlib
import re
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent
MADE = {"compiler/check/RULES.md": ["sheafc", "explain", "--markdown"]}


def commands(document):
    """Each command of the document with the lines it must print."""
    for block in re.findall(r"```console\n(.*?)```", document, re.S):
        command, lines = None, []
        for line in block.splitlines():
            if line.startswith("$ "):
                if command:
                    yield command, lines
                command, lines = line[2:], []
            elif line.startswith("> ") and not lines:
                command += "\n" + line[2:]
            else:
                lines.append(line)
        yield command, lines


def pattern(lines):
    parts = ["(?:.*\n)*?" if line == "..." else re.escape(line) + "\n" for line in lines]
    return re.compile("".join(parts) + r"\Z")


def main():
    parser = argparse.ArgumentParser(description="What the documents show must be true.")
    parser.add_argument("--build", type=pathlib.Path, default=ROOT / "build" / "debug")
    build = parser.parse_args().build.resolve()
    env = dict(os.environ, PATH=f"{build}:{os.environ['PATH']}", SHEAF_LIBRARY=str(build / "orrindale.sheaf"),
               SPECS=str(ROOT / "specs-yaml"), LC_ALL="C.UTF-8", SHEAF_TODAY="2026-11-25", COLUMNS="80", NO_COLOR="1")
    wrong, count = 0, 0
    with tempfile.TemporaryDirectory(prefix="readme-") as folder:
        for command, lines in commands((ROOT / "README.md").read_text()):
            done = subprocess.run(command, shell=True, cwd=folder, env=env, stdin=subprocess.DEVNULL, text=True,
                                  capture_output=True, timeout=120, check=False)
            count += 1
            if not pattern(lines).match(re.sub("[\u00a0\u202f]", " ", re.sub(r"\n+\Z", "\n", done.stdout))):
                wrong += 1
                print(f"README.md shows for '{command}':\n" + "\n".join(lines) + f"\n... but it prints:\n{done.stdout}")
    for page, command in MADE.items():
        count += 1
        made = subprocess.run([build / command[0], *command[1:]], capture_output=True, text=True, check=True).stdout
        if made != (ROOT / page).read_text():
            wrong += 1
            print(f"{page} is stale; write it again: build/{' '.join(command)} > {page}")
    print(f"{count} shown, {wrong} untrue")
    sys.exit(1 if wrong or not count else 0)


if __name__ == "__main__":
    main()
