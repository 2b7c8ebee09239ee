#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""Finds the weights of query/search/weights.h from questions whose wanted answers are known (multinomial logistic
regression with a Gaussian prior; SciPy's L-BFGS-B).

  evidence LIBRARY FILE... >evidence.txt
  fit_weights.py evidence.txt [--hold-out]            --hold-out: how well each file is answered by the weights of the others
  fit_weights.py evidence.txt --write query/search/weights.h

Each question that has an answer is used once more without it, when none is right: a reader must not be given the next best.
"""
import argparse
import collections
import re

import numpy
from scipy.optimize import minimize

PRIOR = 0.3  # precision of the weights
SHARE_OF_NOTHING = 2.0  # how much a question counts that no sheet answers: a wrong answer is worse than none
SHARE_OF_ABSENT = 0.2  # how much a question counts whose answer was taken away
LIKELY_ENOUGH, AS_LIKELY, MOST_ANSWERS = 0.5, 0.4, 3  # as in query/search/weigh.cc


class Case:
    """One question: a row of counts for each entry, and the last for there being no answer."""

    def __init__(self, file, kind, words):
        self.file, self.kind, self.words = file, kind, words
        self.share = SHARE_OF_NOTHING if kind == "none" else 1.0
        self.doubt, self.entries, self.wanted, self.addresses = [], [], [], []

    def rows(self, entry_counts):
        self.counts = numpy.zeros((len(self.entries) + 1, entry_counts + len(self.doubt)))
        for row, entry in enumerate(self.entries):
            self.counts[row, :entry_counts] = entry
        self.counts[-1, entry_counts:] = self.doubt
        self.right = numpy.array(self.wanted + [0.0])
        if not self.right.any():
            self.right[-1] = 1.0

    def without_answer(self):
        case = Case(self.file, "none", self.words)
        kept = [row for row in range(len(self.right)) if not self.right[row]]
        case.counts, case.share = self.counts[kept], SHARE_OF_ABSENT
        case.right = numpy.zeros(len(kept))
        case.right[-1] = 1.0
        return case

    def chances(self, weights):
        sums = self.counts @ weights
        chances = numpy.exp(sums - sums.max())
        return chances / chances.sum()

    def outcome(self, weights):
        chances = self.chances(weights)
        entries, none = chances[:-1], chances[-1]
        if not len(entries) or entries.max() < none:
            given = []
        else:
            given = [row for row in numpy.argsort(-entries, kind="stable") if entries[row] >= AS_LIKELY * entries.max()]
            if len(given) > MOST_ANSWERS or entries[given].sum() < LIKELY_ENOUGH:
                given = []
        if self.kind == "none":
            return "wrong" if given else "right"
        if not given:
            return "none"
        if self.kind == "which":
            return "right" if len(given) > 1 and self.right[given].all() else "wrong" if len(given) == 1 else "among"
        return "right" if self.right[given[0]] else "wrong" if len(given) == 1 else "among"


def read_cases(path):
    cases, seen, skip = [], set(), False
    for line in open(path, encoding="utf-8"):
        head, _, rest = line.rstrip("\n").partition(" ")
        if head == "question":
            file, kind, words = rest.split(" ", 2)
            skip = (file, words) in seen
            seen.add((file, words))
            if not skip:
                cases.append(Case(file, kind, words))
        elif skip:
            continue
        elif head == "none":
            cases[-1].doubt = [float(count) for count in rest.split()]
        elif head == "entry":
            wanted, address, counts = rest.split(" ", 2)
            cases[-1].wanted.append(float(wanted))
            cases[-1].addresses.append(address)
            cases[-1].entries.append([float(count) for count in counts.split()])
    entry_counts = max(len(entry) for case in cases for entry in case.entries)
    for case in cases:
        case.rows(entry_counts)
    return cases


def fit(cases):
    width = cases[0].counts.shape[1]

    def loss(weights):
        total, slope = PRIOR * (weights @ weights) / 2, PRIOR * weights
        for case in cases:
            chances = case.chances(weights)
            right = (chances * case.right).sum() + 1e-12
            total -= case.share * numpy.log(right)
            slope = slope - case.share * (case.counts.T @ (chances * case.right / right - chances))
        return total, slope

    return minimize(loss, numpy.zeros(width), jac=True, method="L-BFGS-B", options={"maxiter": 300}).x


def with_absent(cases):
    return cases + [case.without_answer() for case in cases if case.kind == "one" and not case.right[-1]]


def hold_out(cases):
    print(f"{'file':<12} {'asked':>5} {'right':>6} {'wrong':>6} {'among':>6} {'none':>5}")
    for file in sorted({case.file for case in cases}):
        weights = fit(with_absent([case for case in cases if case.file != file]))
        outcomes = collections.Counter(case.outcome(weights) for case in cases if case.file == file)
        print(f"{file:<12} {sum(outcomes.values()):>5} " + " ".join(f"{outcomes[each]:>5}" for each in ("right", "wrong", "among", "none")))


def write(path, weights):
    """The numbers between braces, in their order; everything else stays as it is."""
    text = open(path, encoding="utf-8").read()
    begin = text.index("evidence_weights = ")
    left = iter(weights)
    number = re.compile(r"-?\d+(?:\.\d+)?")
    lines = []
    for line in text[begin:].split("\n"):
        code, mark, comment = line.partition("//")
        lines.append(number.sub(lambda _: f"{next(left):.2f}", code) + mark + comment)
    with open(path, "w", encoding="utf-8") as file:
        file.write(text[:begin] + "\n".join(lines))
    if next(left, None) is not None:
        raise SystemExit("fit_weights.py: weights.h has fewer numbers than there are weights")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("evidence")
    parser.add_argument("--hold-out", action="store_true")
    parser.add_argument("--write", metavar="WEIGHTS_H")
    options = parser.parse_args()
    cases = read_cases(options.evidence)
    if options.hold_out:
        hold_out(cases)
    if options.write:
        write(options.write, fit(with_absent(cases)))


if __name__ == "__main__":
    main()
