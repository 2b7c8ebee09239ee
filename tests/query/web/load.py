#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""Sixty-four connections by wrk while the library is replaced ten times: no error, memory flat, the replacements seen.

    tests/query/web/load.py [--build DIR] [--library FILE] [--seconds N]
"""

import argparse
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import time

from serving import get, served

ROOT = pathlib.Path(__file__).resolve().parents[3]
REPLACED = 10
CONNECTIONS = 64
MOST_GROWTH = 1.25  # of memory, from after the first replacement to the end

# Asked in turn on each connection; wrk counts every status of 400 and above.
PATHS = ["/find?q=top+plug+muleback+2013", "/api/find?q=torque+fork", "/entry/sorvane-41-rod/top-plug", "/find?q=tpo+plgu",
         "/match?q=41.1x54x11", "/card/sorvane-41-rod", "/convert?q=35+N%C2%B7m", "/page.js", "/health"]
SCRIPT = """
local paths = {PATHS}
local at = 0
request = function() at = at % #paths + 1 return wrk.format("GET", paths[at]) end
"""


def resident_kib(process):
    status = pathlib.Path(f"/proc/{process.pid}/status").read_text("ascii")
    return int(re.search(r"VmRSS:\s+(\d+)", status)[1])


def replace(library, content):
    fresh = library.with_suffix(".new")
    shutil.copy(content, fresh)
    fresh.rename(library)


def paths_answered(sheaf, contents):
    """Those that every one of the libraries has an answer for."""
    paths = list(PATHS)
    for content in contents:
        with served(sheaf, content) as (_, port):
            paths = [path for path in paths if get(port, path)[0] == 200]
    return paths


def faults(sheaf, contents, folder, seconds):
    library = folder / "bench.sheaf"
    shutil.copy(contents[0], library)
    script = folder / "asking.lua"
    paths = paths_answered(sheaf, contents)
    print(f"asked in turn: {' '.join(paths)}")
    script.write_text(SCRIPT.replace("PATHS", ", ".join(f'"{path}"' for path in paths)), "ascii")
    with served(sheaf, library) as (process, port):
        load = subprocess.Popen(["wrk", "-t2", f"-c{CONNECTIONS}", f"-d{seconds}", "--latency", "-s", script,
                                 f"http://127.0.0.1:{port}/"], stdout=subprocess.PIPE, text=True)
        memory, digests = [], set()
        for turn in range(1, REPLACED + 1):
            time.sleep(seconds / (REPLACED + 2))
            replace(library, contents[turn % len(contents)])
            memory.append(resident_kib(process))
            digests.add(json.loads(get(port, "/health")[1])["digest"])
        said = load.communicate()[0]
        memory.append(resident_kib(process))
        print(said)
        print("resident MiB at each replacement:", " ".join(f"{kib / 1024:.1f}" for kib in memory))
        if "Socket errors" in said or "Non-2xx" in said or load.returncode:
            yield "wrk met errors"
        if memory[-1] > memory[1] * MOST_GROWTH:
            yield f"memory grew from {memory[1]} to {memory[-1]} KiB"
        if len(contents) > 1 and len(digests) < 2:
            yield "no replacement was seen"


def main():
    parser = argparse.ArgumentParser(description="Under load.")
    parser.add_argument("--build", type=pathlib.Path, default=ROOT / "build" / "debug")
    parser.add_argument("--library", type=pathlib.Path)
    parser.add_argument("--seconds", type=int, default=60)
    given = parser.parse_args()
    library = given.library or given.build / "orrindale.sheaf"
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        other = folder / "other.sheaf"  # the same sheets without one: another digest
        sheets = folder / "sheets"
        shutil.copytree(ROOT / "specs-yaml", sheets)
        next(sheets.rglob("*crib*.yaml")).unlink()
        subprocess.run([given.build / "sheafc", "build", sheets, "-o", other], check=True, capture_output=True)
        found = list(faults(given.build / "sheaf", [library, other], folder, given.seconds))
    print("\n".join(found) or "held")
    sys.exit(1 if found else 0)


if __name__ == "__main__":
    main()
