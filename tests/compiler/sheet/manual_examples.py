#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""Every example of the authoring manual, specs-yaml/README.md, must compile without a word against it.

A block marked `yaml` is a whole sheet and stands beside the project's own; one marked `yaml SECTION` holds entries of
that section and is put on a sheet that fits one machine of all years.

    manual_examples.py --build DIR
"""

import argparse
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[3]
BLOCK = re.compile(r"^```yaml *([a-z-]*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
FRAME = """sheet: {name}
title: An example of the manual
assembly: controls
invented: yes
fits: {{ make: Haldrek, model: Manual {number}, years: 1990.. }}
source: {{ title: The authoring manual }}
checked: {{ on: 2026-10-02, by: workshop, second: N. }}
cautions: [eye-protection]
{section}:
{entries}"""


def sheets(manual):
    """Each block as (name, text, the line of the manual before the sheet's first)."""
    for number, block in enumerate(BLOCK.finditer(manual)):
        line = manual.count("\n", 0, block.start(2))
        section, text = block.groups()
        if section:
            name = f"manual-block-{number}"
            entries = "".join(f"  {row}\n" if row else "\n" for row in text.splitlines())
            whole = FRAME.format(name=name, number=number, section=section, entries=entries)
            yield name, whole, line - FRAME.count("\n")
        else:
            yield re.match(r"sheet: (\S+)", text).group(1), text, line


def main():
    parser = argparse.ArgumentParser(description="Compiles the manual's examples.")
    parser.add_argument("--build", type=pathlib.Path, required=True)
    sheafc = parser.parse_args().build.resolve() / "sheafc"
    manual = (ROOT / "specs-yaml" / "README.md").read_text("utf-8")
    with tempfile.TemporaryDirectory(prefix="manual-") as folder:
        here = pathlib.Path(folder)
        for own in ("demo", "standards", "words"):
            shutil.copytree(ROOT / "specs-yaml" / own, here / own)
        lines = {}
        (here / "manual").mkdir()
        for name, text, line in sheets(manual):
            (here / "manual" / f"{name}.yaml").write_text(text, "utf-8")
            lines[f"manual/{name}.yaml"] = line
        done = subprocess.run([sheafc, "check", "--json", "."], cwd=here, capture_output=True, text=True, check=False)
        if done.returncode not in (0, 1):
            sys.exit(done.stderr)
        wrong = 0
        for item in map(json.loads, done.stdout.splitlines()):
            file = item["file"].removeprefix("./")
            if file in lines:
                wrong += 1
                print(f"specs-yaml/README.md:{lines[file] + item['line']}: {item['severity']}: {item['message']} [{item['rule']}]")
    print(f"{len(lines)} examples, {wrong} reports")
    sys.exit(1 if wrong or not lines else 0)


if __name__ == "__main__":
    main()
