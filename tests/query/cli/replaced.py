#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""People ask on while the library is built anew under them: no question fails, and each answer is of one library.

    tests/query/cli/replaced.py --build DIR
"""

import argparse
import itertools
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import threading

REPLACEMENTS = 20
SHEET = """sheet: fork
title: A fork
assembly: fork
invented: yes
fits: {{ make: Haldrek, model: Trialmule 77, years: 2011..2015 }}
source: {{ title: Leaflet {edition}, edition: {edition} }}
checked: {{ on: 2026-10-02, by: workshop, against: source }}
settings:
  preload: {{ name: spring preload, standard: {turns} turns, count-from: fully out }}
  rebound: {{ name: rebound, standard: {turns} clicks, count-from: fully in }}
"""


def main():
    parser = argparse.ArgumentParser(description="Questions through replacements.")
    parser.add_argument("--build", type=pathlib.Path, default=pathlib.Path("build/debug"))
    build = parser.parse_args().build.resolve()
    here = pathlib.Path(tempfile.mkdtemp(prefix="replaced-"))
    env = {"PATH": "/usr/bin:/bin", "HOME": str(here), "SHEAF_LIBRARY": str(here / "shop.sheaf"), "LC_ALL": "C.UTF-8"}
    env |= {k: v for k, v in os.environ.items() if k.endswith("SAN_OPTIONS")}
    (here / "sheets").mkdir()
    shutil.copytree("specs-yaml/words", here / "sheets" / "words")
    faults, answered, seen, done = [], itertools.count(), set(), threading.Event()

    def write(turn):
        (here / "sheets" / "fork.yaml").write_text(SHEET.format(edition=turn, turns=turn), "utf-8")
        subprocess.run([build / "sheafc", "build", "--quiet", here / "sheets", "-o", here / "shop.sheaf"], env=env,
                       check=True, stdin=subprocess.DEVNULL, stderr=subprocess.PIPE)

    def ask(command):
        while not done.is_set():
            asked = subprocess.run([build / "sheaf", *command, "--json"], env=env, stdin=subprocess.DEVNULL,
                                   capture_output=True, text=True, check=False)
            next(answered)
            if asked.returncode != 0 or asked.stderr:
                faults.append(f"{command}: status {asked.returncode}: {asked.stderr.strip()}")
                return
            results = json.loads(asked.stdout)["results"]
            mine = [r for r in results if r["address"].startswith("fork/")]
            editions = {r["source"]["edition"] for r in mine} | {f["text"].split()[0] for r in mine for f in r["figures"]}
            if len(editions) != 1:
                faults.append(f"{command}: parts of several libraries in one answer: {editions}")
                return
            seen.update(editions)

    write(1)
    commands = [["find", "spring", "preload", "trialmule", "2013"], ["show", "fork/preload", "fork/rebound"]]
    threads = [threading.Thread(target=ask, args=(command,)) for command in commands]
    for thread in threads:
        thread.start()
    for turn in range(2, 2 + REPLACEMENTS):
        write(turn)
    done.set()
    for thread in threads:
        thread.join()
    shutil.rmtree(here)
    asked = next(answered)
    if asked < REPLACEMENTS or len(seen) < 3:
        faults.append(f"too little happened: {asked} questions, {len(seen)} libraries seen")
    print("\n".join(faults) or f"{asked} questions through {REPLACEMENTS} replacements, {len(seen)} libraries seen")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
