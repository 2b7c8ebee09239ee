// SPDX-License-Identifier: GPL-2.0-or-later
// What a writer is told of each mistake, word for word: faults.txt holds cases of
//
//   === name
//   the sheet
//   >>>
//   the report
//
// To take over new words after reading them: UPDATE=1 source_test, then look at the difference.
#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "tests/compiler/source/reading.h"

namespace {

constexpr const char* golden_file = "tests/compiler/source/faults.txt";

struct Case {
  std::string name, sheet, report;
};

std::vector<Case> read_cases() {
  std::ifstream in(golden_file);
  std::vector<Case> cases;
  std::string* part = nullptr;
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with("=== ")) {
      cases.push_back({line.substr(4), {}, {}});
      part = &cases.back().sheet;
    } else if (line == ">>>" && part == &cases.back().sheet) {
      part = &cases.back().report;
    } else if (part) {
      *part += line + "\n";
    }
  }
  return cases;
}

}  // namespace

TEST_CASE("each mistake is explained in the words that were agreed on") {
  const std::vector<Case> cases = read_cases();
  REQUIRE(cases.size() > 30);
  std::string updated;
  for (const Case& c : cases) {
    INFO(c.name);
    const sheafc::Reading sheet(c.sheet);
    const std::string report = sheet.report() + "\n";
    updated += "=== " + c.name + "\n" + c.sheet + ">>>\n" + report;
    if (!std::getenv("UPDATE")) CHECK(report == c.report);
  }
  if (std::getenv("UPDATE")) std::ofstream(golden_file) << updated;
}
