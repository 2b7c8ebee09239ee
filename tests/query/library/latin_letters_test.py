#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""latin_letters.h is what latin_letters.py writes: nobody has touched the table by hand."""
import pathlib
import subprocess
import sys

folder = pathlib.Path(__file__).resolve().parents[3] / "query/library"
made = subprocess.run([sys.executable, folder / "latin_letters.py"], check=True, capture_output=True).stdout
if made != (folder / "latin_letters.h").read_bytes():
    sys.exit("latin_letters.h is stale: python3 latin_letters.py > latin_letters.h")
