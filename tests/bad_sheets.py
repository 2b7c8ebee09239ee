#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""Sheets with faults, each of which says inside itself what sheafc check must find: that, and nothing else.

A case is a sheet in tests/sheets/bad/, or a folder there when it takes several. Anywhere in a sheet, a comment

    # expect error 4:1 duplicate-key                  severity, line:column, rule
    # expect error 9:3 twin-entry with 4:3            ... and a note that points at another place
    # expect error 9:3 twin-entry with other.yaml:4:3

names one fault of that very file. Each must be reported once, at that place and by that rule; any other report, of
whatever severity, fails the case. A sheet that needs the published tables or the glossary says so:

    # with standards words                            folders of specs-yaml/ to check beside it

Sheets in tests/sheets/good/ expect nothing, so they must be silent. A new case is one file and no code.

    tests/bad_sheets.py [--build DIR] [CASE...]
"""

import argparse
import collections
import concurrent.futures
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent
SHEETS = ROOT / "tests" / "sheets"
SECONDS_A_CASE = 120
EXPECT = re.compile(r"#\s*expect\b\s*(.*)")
FAULT = re.compile(r"(error|warning|note) (\d+):(\d+) ([a-z0-9-]+)(?: with (?:(\S+):)?(\d+):(\d+))?\s*$")
WITH = re.compile(r"#\s*with\b\s+([a-z ]+?)\s*$")

Fault = collections.namedtuple("Fault", "file line column severity rule")
Pointer = collections.namedtuple("Pointer", "fault file line column")


def expectations(sheet, name):
    """The faults, the notes that go with them, and the folders that a sheet asks for."""
    faults, pointers, folders = [], [], []
    for number, line in enumerate(sheet.read_bytes().decode("utf-8", "replace").splitlines(), 1):
        if asked := WITH.search(line):
            folders += asked.group(1).split()
        if said := EXPECT.search(line):
            match = FAULT.match(said.group(1))
            if not match:
                raise SystemExit(f"{sheet}:{number}: not an expectation: {said.group(0)}")
            severity, at, column, rule, other, other_line, other_column = match.groups()
            fault = Fault(name, int(at), int(column), severity, rule)
            faults.append(fault)
            if other_line:
                pointers.append(Pointer(fault, other or name, int(other_line), int(other_column)))
    return faults, pointers, folders


def report_of(item, strip):
    return Fault(item["file"].removeprefix(strip), item["line"], item["column"], item["severity"], item["rule"])


def check(sheafc, folder):
    """Runs sheafc check on folder/sheets; returns the JSON lines as dictionaries, and the status."""
    done = subprocess.run([sheafc, "check", "--json", "sheets"], cwd=folder, stdin=subprocess.DEVNULL,
                          capture_output=True, timeout=SECONDS_A_CASE, check=False)
    if done.returncode not in (0, 1):
        raise ValueError(f"sheafc ended with {done.returncode}: {done.stderr.decode('utf-8', 'replace').strip()}")
    return [json.loads(line) for line in done.stdout.decode("utf-8").splitlines()], done.returncode


def lay_out(case, folder):
    """Copies a case and what it asks for into folder/sheets."""
    sheets = folder / "sheets"
    sheets.mkdir()
    files = sorted(case.rglob("*.yaml")) if case.is_dir() else [case]
    faults, pointers = [], []
    for file in files:
        name = str(file.relative_to(case if case.is_dir() else case.parent))
        (sheets / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(file, sheets / name)
        its_faults, its_pointers, folders = expectations(file, name)
        faults += its_faults
        pointers += its_pointers
        for asked in folders:
            shutil.copytree(ROOT / "specs-yaml" / asked, sheets / asked, dirs_exist_ok=True)
    return faults, pointers


def told(fault):
    return f"{fault.file}:{fault.line}:{fault.column} {fault.severity} [{fault.rule}]"


def differences(wanted, pointers, items, status):
    found = collections.Counter(report_of(item, "sheets/") for item in items)
    wanted = collections.Counter(wanted)
    messages = {report_of(item, "sheets/"): item["message"] for item in items}
    for fault in (wanted - found).elements():
        yield f"not reported: {told(fault)}"
    for fault in (found - wanted).elements():
        yield f"not expected: {told(fault)}: {messages[fault]}"
    notes = {Pointer(report_of(item, "sheets/"), note["file"].removeprefix("sheets/"), note["line"], note["column"])
             for item in items for note in item.get("notes", [])}
    for pointer in pointers:
        if pointer not in notes and pointer.fault in found:
            yield f"no note at {pointer.file}:{pointer.line}:{pointer.column} for [{pointer.fault.rule}]"
    if status != (1 if any(fault.severity == "error" for fault in found) else 0):
        yield f"sheafc ended with {status}, which its reports do not explain"


def failures(case, sheafc):
    with tempfile.TemporaryDirectory(prefix="sheets-") as folder:
        folder = pathlib.Path(folder)
        wanted, pointers = lay_out(case, folder)
        bad = SHEETS / "bad" in case.parents
        if bad != bool(wanted):
            return ["a bad sheet that expects no fault" if bad else "a good sheet that expects a fault"]
        try:
            items, status = check(sheafc, folder)
            return list(differences(wanted, pointers, items, status))
        except (ValueError, KeyError, subprocess.TimeoutExpired) as trouble:
            return [f"{type(trouble).__name__}: {trouble}"]


def all_cases():
    cases = [path for kind in ("bad", "good") for path in (SHEETS / kind).iterdir()
             if path.is_dir() or path.suffix == ".yaml"]
    return sorted(cases)


def main():
    parser = argparse.ArgumentParser(description="Sheets that say which faults they have.")
    parser.add_argument("--build", type=pathlib.Path, default=ROOT / "build" / "debug")
    parser.add_argument("cases", nargs="*", type=pathlib.Path)
    options = parser.parse_args()
    sheafc = options.build.resolve() / "sheafc"
    cases = [case.resolve() for case in options.cases] or all_cases()
    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        results = list(pool.map(lambda case: failures(case, sheafc), cases))
    for case, faults in zip(cases, results):
        for fault in faults:
            print(f"{os.path.relpath(case, ROOT)}: {fault}")
    wrong = sum(1 for faults in results if faults)
    print(f"{len(cases)} cases, {wrong} wrong")
    sys.exit(1 if wrong or not cases else 0)


if __name__ == "__main__":
    main()
