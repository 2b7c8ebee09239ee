#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""Every pair of units of one dimension, converted by us and by general-purpose references that share nothing with us.

GNU units, @lhncbc/ucum-lhc and pint are asked for each pair that they have names for (unit_names.csv). All that
answer must agree with us to 1e-12, temperatures to 1e-9. Every unit of ours is known to at least two of them or
stands in units_alone.csv with another check. A reference that is missing fails the test: it never skips.

    tests/outside/units_references.py --build DIR --node-modules DIR
"""

import argparse
import collections
import csv
import json
import os
import pathlib
import subprocess
import sys

HERE = pathlib.Path(__file__).resolve().parent
RELATIVE, DEGREES = 1e-12, 1e-9
Pair = collections.namedtuple("Pair", "dimension origin target value converted")


def rows_of(name):
    lines = [line for line in (HERE / name).read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    return list(csv.DictReader(lines))


def our_pairs(build):
    text = subprocess.run([build / "tests" / "unit_pairs"], check=True, capture_output=True, encoding="utf-8").stdout
    pairs = []
    for line in text.splitlines():
        dimension, origin, target, value, converted = line.split("\t")
        pairs.append(Pair(dimension, origin, target, float(value), float(converted)))
    return pairs


class GnuUnits:
    """units(1) on one standard input: the unit we have and the one we want, line by line."""

    TEMPERATURES = {"°C": "tempC", "°F": "tempF", "K": "tempK", "°R": "tempR"}

    def convert(self, requests):
        lines = []
        for value, origin, target in requests:
            lines += [f"{value!r} ({origin})", target]
        return self.ask(lines)

    def convert_temperatures(self, requests):
        lines = []
        for value, origin, target in requests:
            lines += [f"{self.TEMPERATURES[origin]}({value!r})", self.TEMPERATURES[target]]
        return self.ask(lines)

    @staticmethod
    def ask(lines):
        out = subprocess.run(["units", "-q", "-t", "-o", "%.17g"], input="\n".join(lines) + "\n", check=True,
                             capture_output=True, encoding="utf-8", env={**os.environ, "LC_ALL": "C.UTF-8"}).stdout
        answers = []
        for line in out.splitlines():
            try:
                answers.append(float(line))
            except ValueError:
                answers.append(None)
        return answers


class Ucum:
    TEMPERATURES = {"°C": "Cel", "°F": "[degF]", "K": "K", "°R": "[degR]"}

    def __init__(self, node_modules):
        self.environment = {**os.environ, "NODE_PATH": str(node_modules)}

    def convert(self, requests):
        out = subprocess.run(["node", HERE / "ucum.js"], input=json.dumps(requests), check=True, capture_output=True,
                             encoding="utf-8", env=self.environment).stdout
        return json.loads(out)

    def convert_temperatures(self, requests):
        return self.convert([(value, self.TEMPERATURES[a], self.TEMPERATURES[b]) for value, a, b in requests])


class Pint:
    TEMPERATURES = {"°C": "degC", "°F": "degF", "K": "kelvin", "°R": "degR"}

    def __init__(self):
        import pint
        self.registry = pint.UnitRegistry()
        self.registry.default_format = ""

    def convert(self, requests):
        return [self.registry.Quantity(value, origin).to(target).magnitude for value, origin, target in requests]

    def convert_temperatures(self, requests):
        return self.convert([(value, self.TEMPERATURES[a], self.TEMPERATURES[b]) for value, a, b in requests])


def named(pairs, names, reference):
    """The pairs whose two units the reference has names for, and the requests to put to it."""
    known, requests = [], []
    for pair in pairs:
        if pair.dimension == "temperature":
            continue
        origin, target = (names.get((pair.dimension, symbol), {}).get(reference) for symbol in (pair.origin, pair.target))
        if origin and target:
            known.append(pair)
            requests.append((pair.value, origin, target))
    return known, requests


def disagreements(name, pairs, answers, close):
    if len(pairs) != len(answers):
        yield f"{name}: {len(answers)} answers to {len(pairs)} questions"
        return
    for pair, answer in zip(pairs, answers):
        if answer is None or not close(pair.converted, answer):
            yield f"{name}: {pair.value:g} {pair.origin} is {pair.converted!r} {pair.target} here, {answer!r} there"


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--build", type=pathlib.Path, required=True)
    parser.add_argument("--node-modules", type=pathlib.Path, required=True)
    options = parser.parse_args()

    pairs = our_pairs(options.build)
    names = {(row["dimension"], row["symbol"]): row for row in rows_of("unit_names.csv")}
    alone = {(row["dimension"], row["symbol"]) for row in rows_of("units_alone.csv")}
    references = {"gnu": GnuUnits(), "ucum": Ucum(options.node_modules), "pint": Pint()}
    faults, votes = [], collections.Counter()

    temperatures = [pair for pair in pairs if pair.dimension == "temperature"]
    for name, reference in references.items():
        known, requests = named(pairs, names, name)
        faults += disagreements(name, known, reference.convert(requests),
                                lambda ours, theirs: abs(ours - theirs) <= RELATIVE * abs(theirs))
        votes.update({(pair.dimension, symbol) for pair in known for symbol in (pair.origin, pair.target)})
        requests = [(pair.value, pair.origin, pair.target) for pair in temperatures]
        faults += disagreements(name, temperatures, reference.convert_temperatures(requests),
                                lambda ours, theirs: abs(ours - theirs) <= DEGREES)
        print(f"{name}: {len(known)} pairs, {len(temperatures)} temperatures")

    ours = {(pair.dimension, pair.origin) for pair in pairs}
    faults += [f"{unit}: known to {votes[unit]} references and to no other check" for unit in sorted(ours - alone)
               if votes[unit] < 2]
    faults += [f"{unit}: in unit_names.csv, and no unit of ours" for unit in sorted(set(names) - ours)]
    print("\n".join(faults) if faults else f"{len(pairs)} pairs of {len(ours)} units agree")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
