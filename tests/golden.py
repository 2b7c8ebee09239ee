#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""Golden tests of the command line: what was typed, and every byte that came back.

A case is a text file in tests/golden/. Lines that begin with '#' and blank lines are for the reader.

    # What the case shows, and why it matters.
    $ sheaf show no-such-sheet
    ! sheaf: error: no sheet 'no-such-sheet' in $LIBRARY
    exit 2

'$ ' begins a command for sh, '> ' continues it. '| ' is a line of its standard output, '! ' one of its standard
error, and 'exit N' its status. A last line without its newline is followed by '|\\' or '!\\'. All commands of a
file run one after the other in one empty folder, with sheaf and sheafc on the path and these variables set, which
also stand for their values in the output: $LIBRARY (the demonstration library), $SPECS (specs-yaml), $TESTS
(tests), $HERE (the empty folder). $SHEAF and $SHEAFC are the programs' paths.

    tests/golden.py [--build DIR] [--update] [FILE...]

With --update the files are rewritten to what came back; read the difference before it is committed.
"""

import argparse
import difflib
import os
import pathlib
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent
SECONDS_A_COMMAND = 120


def parse(text):
    """Splits a case into its commands: (lines before it, command lines, expected lines)."""
    cases, before = [], []
    for number, line in enumerate(text.rstrip("\n").split("\n"), 1):
        if line.startswith("$ "):
            cases.append((before, [line], []))
            before = []
        elif line.startswith("> ") and cases and not cases[-1][2]:
            cases[-1][1].append(line)
        elif line[:1] in ("|", "!") or line.startswith("exit "):
            if not cases or before:
                raise SystemExit(f"line {number}: output that belongs to no command: {line}")
            cases[-1][2].append(line)
        elif not line or line.startswith("#"):
            before.append(line)
        else:
            raise SystemExit(f"line {number}: begins with none of $ > | ! # or exit: {line}")
    if not cases:
        raise SystemExit("no command in it, so it tests nothing")
    return cases, before


def environment(build, here):
    names = {
        "SHEAF": build / "sheaf",
        "SHEAFC": build / "sheafc",
        "LIBRARY": build / "orrindale.sheaf",
        "SPECS": ROOT / "specs-yaml",
        "TESTS": ROOT / "tests",
        "HERE": here,
    }
    fixed = {
        "PATH": f"{build}:/usr/local/bin:/usr/bin:/bin",
        "HOME": str(here),
        "LC_ALL": "C.UTF-8",
        "TERM": "dumb",
        "TZ": "UTC",
        "SHEAF_LIBRARY": str(build / "orrindale.sheaf"),
        "SHEAF_TODAY": "2026-11-25",  # calibrations fall due
    }
    sanitizers = {k: v for k, v in os.environ.items() if k in ("ASAN_OPTIONS", "LSAN_OPTIONS", "UBSAN_OPTIONS")}
    variables = {k: str(v) for k, v in names.items()}
    return variables, {**sanitizers, **fixed, **variables}


def with_names(text, variables):
    """Puts the variables' names where their values stand, the longest value first."""
    for name, value in sorted(variables.items(), key=lambda item: -len(item[1])):
        text = text.replace(value, "$" + name)
    return text


def marked(text, mark):
    lines = [f"{mark} {line}" if line else mark for line in text.split("\n")]
    if lines[-1] == mark:
        lines.pop()
    else:
        lines.append(mark + "\\")
    return lines


def run(command_lines, variables, env, here):
    command = "\n".join(line[2:] for line in command_lines)
    done = subprocess.run(["sh", "-c", command], cwd=here, env=env, stdin=subprocess.DEVNULL, capture_output=True,
                          timeout=SECONDS_A_COMMAND, check=False)
    out, err = (with_names(stream.decode("utf-8", "backslashreplace"), variables)
                for stream in (done.stdout, done.stderr))
    return marked(out, "|") + marked(err, "!") + [f"exit {done.returncode}"]


def show_difference(file, command_lines, wanted, got):
    print(f"{file}: not what was wanted from\n" + "\n".join(command_lines))
    print("--- wanted\n" + "\n".join(wanted))
    print("--- got\n" + "\n".join(got))
    print("--- difference\n" + "\n".join(line for line in difflib.ndiff(wanted, got) if line[0] in "-+?"))


def check(file, build, update):
    """True if every command answered as the file says; with update, the file is made to say so."""
    cases, after = parse(file.read_bytes().decode("utf-8"))
    same, lines = True, []
    with tempfile.TemporaryDirectory(prefix="golden-") as here:
        variables, env = environment(build, pathlib.Path(here).resolve())
        for before, command_lines, wanted in cases:
            got = run(command_lines, variables, env, here)
            lines += before + command_lines + got
            if got != wanted:
                same = False
                if not update:
                    show_difference(file, command_lines, wanted, got)
    if update and not same:
        file.write_bytes(("\n".join(lines + after) + "\n").encode("utf-8"))
        print(f"rewrote {file}")
    return same or update


def main():
    parser = argparse.ArgumentParser(description="Golden tests of the command line.")
    parser.add_argument("--build", type=pathlib.Path, default=ROOT / "build" / "debug")
    parser.add_argument("--update", action="store_true", help="rewrite the files to what came back")
    parser.add_argument("files", nargs="*", type=pathlib.Path)
    options = parser.parse_args()
    files = options.files or sorted((ROOT / "tests" / "golden").glob("*.txt"))
    if not files:
        sys.exit("no golden files")
    build = options.build.resolve()
    results = [check(file, build, options.update) for file in files]
    sys.exit(0 if all(results) else 1)


if __name__ == "__main__":
    main()
