#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""The house rules that a compiler does not check: what stands where, and who may reach whom.

Includes between folders run one way, as the pipeline does; a library that we did not write is included only in .cc
files, and only in the folders that are its wrapper; sheaf never links the reader of YAML.

    tests/house.py [--build DIR]
"""

import argparse
import pathlib
import re
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent
TOP = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE", "build-db", "build", "compiler", "query",
       "specs-yaml", "tests"}

# Each folder reaches those it names and whatever they reach.
REACHES = {
    "query/quantity": [],
    "query/trade": ["query/quantity"],
    "query/library": ["query/trade"],
    "query/search": ["query/library"],
    "query/answer": ["query/search"],
    "query/console": [],
    "query/web": ["query/answer"],
    "query/cli": ["query/answer", "query/console", "query/web"],
    "compiler/source": ["query/library"],
    "compiler/sheet": ["compiler/source", "query/library"],
    "compiler/link": ["compiler/sheet"],
    "compiler/check": ["compiler/link"],
    "compiler/emit": ["compiler/link"],
    "compiler/review": ["query/library"],
    "compiler/cli": ["compiler/check", "compiler/emit", "compiler/review", "query/console"],
}

# Headers of libraries, and the folders whose .cc files may include them.
WRAPPERS = {
    "yaml-cpp/": ["compiler/source"],
    "yaml.h": ["compiler/source"],
    "sqlite3.h": ["query/library", "query/search", "compiler/emit"],
    "xapian.h": ["query/library", "query/search", "compiler/emit"],
    "query/library/index.h": ["query/library", "query/search", "compiler/emit"],
    "CLI/": ["query/console", "query/cli", "compiler/cli"],
    "openssl/": ["query/web"],
    "nlohmann/": list(REACHES),
}

# The one header that shows a library's types, to those wrappers alone.
SHOWS_A_LIBRARY = "query/library/index.h"

# What clang 14, which builds the fuzz targets, cannot read of g++ 12's library.
UNREAD_BY_CLANG = re.compile(r"std::ranges::(rotate|search|unique|stable_partition|partition)\(|std::views::")

INCLUDE = re.compile(r'^\s*#\s*include\s+(?:"([^"]+)"|<([^>]+)>)', re.MULTILINE)
LICENCE = "SPDX-License-Identifier: GPL-2.0-or-later"


def reach(folder):
    reached = {folder}
    for near in REACHES[folder]:
        reached |= reach(near)
    return reached


def folder_of(path):
    """query/cli for query/cli/main.cc and for query/cli/more/x.h; None outside the pipeline."""
    name = "/".join(path.split("/")[:2])
    return name if name in REACHES else None


def wrapper_of(header):
    return next((start for start in WRAPPERS if header.startswith(start)), None)


def include_faults(name, text):
    folder = folder_of(name)
    for own, other in INCLUDE.findall(text):
        library = wrapper_of(own or other)
        if library and other and name.endswith(".h") and name != SHOWS_A_LIBRARY:
            yield f"{name}: a header includes {own or other}; keep it to .cc files"
        if library and folder not in WRAPPERS[library]:
            yield f"{name}: {own or other} is not for {folder}"
        target = folder_of(own)
        if target and target not in reach(folder):
            yield f"{name}: {folder} may not reach {target} ({own})"


def sources():
    for top in ("query", "compiler", "tests"):
        yield from sorted(path for path in (ROOT / top).rglob("*") if path.is_file())


def faults():
    for path in sorted(ROOT.iterdir()):
        if path.name not in TOP and not path.name.startswith("."):
            yield f"{path.name}: does not belong at the top"
    for path in sources():
        name = path.relative_to(ROOT).as_posix()
        ours = path.suffix in (".cc", ".h", ".py", ".sh", ".cmake") or path.name in ("CMakeLists.txt", "run")
        if not ours:
            continue
        text = path.read_text("utf-8")
        if LICENCE not in "\n".join(text.split("\n")[:2]):
            yield f"{name}: no '{LICENCE}' at its top"
        if path.suffix == ".h" and "\n#pragma once\n" not in text:
            yield f"{name}: no #pragma once"
        if path.suffix in (".cc", ".h") and folder_of(name):
            yield from include_faults(name, text)
            for use in UNREAD_BY_CLANG.findall(text):
                yield f"{name}: std::ranges::{use or 'views'}, which clang 14 cannot read and so cannot fuzz"
    for script in ("build-db", "tests/run", "tests/fuzz/run", ".ci/run"):
        if subprocess.run(["sh", "-n", ROOT / script], check=False).returncode:
            yield f"{script}: not a shell script that parses"


def layout_faults():
    code = [path for path in sources() if path.suffix in (".cc", ".h")]
    run = subprocess.run(["clang-format", "--dry-run", "--Werror", *code], cwd=ROOT, capture_output=True, text=True,
                         check=False)
    laid_otherwise = re.findall(r"^(\S+?):(\d+):\d+: error", run.stderr, re.MULTILINE)
    for name in sorted({name for name, line in laid_otherwise}):
        yield f"{pathlib.Path(name).relative_to(ROOT)}: not laid out as clang-format -i does"


def link_faults(build):
    linked = subprocess.run(["ldd", build / "sheaf"], capture_output=True, text=True, check=True).stdout
    if "yaml" in linked:
        yield "sheaf links a reader of YAML"


def main():
    parser = argparse.ArgumentParser(description="House rules.")
    parser.add_argument("--build", type=pathlib.Path, default=ROOT / "build" / "debug")
    build = parser.parse_args().build
    found = [*faults(), *layout_faults(), *link_faults(build)]
    print("\n".join(found) or "the house is in order")
    sys.exit(1 if found else 0)


if __name__ == "__main__":
    main()
