#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""What /api/ answers is byte for byte what the command line prints with --json.

    tests/query/web/same_answers.py [--build DIR]
"""

import argparse
import pathlib
import subprocess
import sys
import urllib.parse

from serving import TODAY, get, served

ROOT = pathlib.Path(__file__).resolve().parents[3]

# The words of the command line, and the parameters of the page.
ASKED = [
    (["find", "top plug muleback 2013"], {"q": "top plug muleback 2013"}),
    (["find", "top plug"], {"q": "top plug"}),
    (["find", "top plug", "--machine", "muleback", "--year", "2009"], {"q": "top plug", "machine": "muleback", "year": "2009"}),
    (["find", "41x54x11"], {"q": "41x54x11"}),
    (["find", "22 nm in ft lbs"], {"q": "22 nm in ft lbs"}),
    (["find", "fork oil muleback 2013 in fl oz"], {"q": "fork oil muleback 2013 in fl oz"}),
    (["find", ""], {"q": ""}),
    (["find", "xyzzy <b>"], {"q": "xyzzy <b>"}),
    (["show", "sorvane-41-rod/top-plug"], {"address": "sorvane-41-rod/top-plug"}),
    (["show", "sorvane-41-rod"], {"address": "sorvane-41-rod"}),
    (["card", "sorvane-41-rod", "--machine", "muleback", "--year", "2013"], {"q": "sorvane-41-rod", "machine": "muleback", "year": "2013"}),
    (["card", "fork"], {"q": "fork"}),
    (["kit", "fork,", "front", "brake", "--machine", "muleback", "--year", "2013"],
     {"q": "fork, front brake", "machine": "muleback", "year": "2013"}),
    (["kit", "--machine", "muleback", "--year", "2013"], {"machine": "muleback", "year": "2013"}),
    (["kit", "sorvane-41-rod", "sorvane-43-rod"], {"q": "sorvane-41-rod sorvane-43-rod"}),
    (["kit", "fork"], {"q": "fork"}),
    (["reckon", "torque", "M8", "class", "8.8", "state", "oiled"], {"topic": "torque", "thread": "M8", "class": "8.8", "state": "oiled"}),
    (["reckon", "viscosity", "32 mm²/s at 40 °C", "and", "6.1 mm²/s at 100 °C", "for", "0 °C"],
     {"topic": "viscosity", "first": "32 mm²/s at 40 °C", "and": "6.1 mm²/s at 100 °C", "for": "0 °C"}),
    (["reckon", "level", "bore", "37.4 mm", "length", "580 mm", "volume", "512 mL"], {"q": "level bore 37.4 mm length 580 mm volume 512 mL"}),
    (["match", "41.1 x 54 x 11"], {"q": "41.1 x 54 x 11"}),
    (["match", "6203-2RS"], {"q": "6203-2RS"}),
    (["convert", "35 ± 3 N·m to lbf·ft"], {"q": "35 ± 3 N·m to lbf·ft"}),
    (["convert", "17.5 oz to mL"], {"q": "17.5 oz to mL"}),
    (["wrench", "35 ± 3 N·m"], {"q": "35 ± 3 N·m"}),
    (["wrench", "sorvane-41-rod/top-plug"], {"q": "sorvane-41-rod/top-plug"}),
]


def command_line(sheaf, library, words):
    shop = [] if words[0] == "convert" else ["--library", str(library)]
    today = ["--today", TODAY] if words[0] in ("card", "kit", "wrench") else []
    return subprocess.run([sheaf, *words, *shop, *today, "--json"], capture_output=True, check=False,
                          env={"SHEAF_TODAY": TODAY}).stdout


def faults(sheaf, library):
    with served(sheaf, library) as (process, port):
        for words, given in ASKED:
            expected = command_line(sheaf, library, words)
            _, answer = get(port, f"/api/{words[0]}?{urllib.parse.urlencode(given)}")
            if not expected or answer != expected:
                yield f"{' '.join(words)}:\n  command line {expected[:300]}\n  page         {answer[:300]}"


def main():
    parser = argparse.ArgumentParser(description="The same answers.")
    parser.add_argument("--build", type=pathlib.Path, default=ROOT / "build" / "debug")
    build = parser.parse_args().build
    found = list(faults(build / "sheaf", build / "orrindale.sheaf"))
    print("\n".join(found) or f"{len(ASKED)} answers are the same")
    sys.exit(1 if found else 0)


if __name__ == "__main__":
    main()
