#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""A card's JSON from standard input, laid out to be compared: without where a sheet has each line, and without
the digest and the date of the library, which change with every sheet. What a step uses stands elsewhere on the
card whole, so of that only the addresses are kept.

    sheaf card sorvane-41-rod --json | tests/cards/plain_json.py
"""

import json
import sys

LEFT_OUT = {"file", "line", "digest", "data-date"}


def addresses(uses):
    return [used["address"] if isinstance(used, dict) else used for used in uses]


def plain(value):
    if isinstance(value, dict):
        return {key: addresses(member) if key == "uses" and isinstance(member, list) else plain(member)
                for key, member in value.items() if key not in LEFT_OUT}
    return [plain(member) for member in value] if isinstance(value, list) else value


def lines(value, indent=0):
    """One line for what is short, so that a golden file stays readable."""
    short = json.dumps(value, ensure_ascii=False)
    pad = " " * indent
    if len(short) + indent <= 118 or not isinstance(value, (dict, list)) or not value:
        return [short]
    out = []
    items = value.items() if isinstance(value, dict) else ((None, member) for member in value)
    for key, member in items:
        first, *rest = lines(member, indent + 1)
        name = "" if key is None else json.dumps(key) + ": "
        out += [f"{pad} {name}{first}", *rest]
        out[-1] += ","
    out[-1] = out[-1].removesuffix(",")
    ends = "{}" if isinstance(value, dict) else "[]"
    return [ends[0], *out, pad + ends[1]]


print("\n".join(lines(plain(json.load(sys.stdin)))))
