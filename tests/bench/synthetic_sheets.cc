// SPDX-License-Identifier: GPL-2.0-or-later
// Writes the sheets of a synthetic fleet as YAML, to measure the compiler with.
//
//   synthetic_sheets COUNT FOLDER
#include <charconv>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <fstream>

#include "tests/content/synthetic_fleet.h"

int main(int argc, char** argv) {
  int count = 0;
  if (argc != 3 || std::from_chars(argv[1], argv[1] + std::strlen(argv[1]), count).ec != std::errc{}) {
    std::fputs("usage: synthetic_sheets COUNT FOLDER\n", stderr);
    return 2;
  }
  const std::filesystem::path folder = argv[2];
  std::filesystem::create_directories(folder);
  for (int i = 0; i < count; ++i) {
    const sheaf::SheetRecord sheet = sheaf::test::synthetic_sheet(i);
    std::ofstream(folder / (sheet.name + ".yaml")) << sheaf::test::synthetic_yaml(sheet);
  }
  std::ofstream(folder / "synthetic-words.yaml") << sheaf::test::synthetic_words_yaml();
}
