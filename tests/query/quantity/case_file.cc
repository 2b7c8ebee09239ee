// SPDX-License-Identifier: GPL-2.0-or-later
#include "tests/query/quantity/case_file.h"

#include <doctest/doctest.h>

#include <fstream>

namespace sheaf::test {
namespace {

std::string trimmed(const std::string& text) {
  const auto first = text.find_first_not_of(' ');
  return first == std::string::npos ? "" : text.substr(first, text.find_last_not_of(' ') - first + 1);
}

std::optional<Dimension> dimension_named(const std::string& name) {
  if (name == "clicks") return Dimension::clicks;
  for (int i = 0; i <= static_cast<int>(Dimension::density); ++i) {
    if (name_of(static_cast<Dimension>(i)) == name) return static_cast<Dimension>(i);
  }
  REQUIRE_MESSAGE(name == "any", "no dimension is called " << name);
  return std::nullopt;
}

}  // namespace

std::vector<Case> read_cases(const std::string& name) {
  std::ifstream file("tests/query/quantity/" + name);
  std::vector<Case> cases;
  int number = 0;
  for (std::string line; std::getline(file, line);) {
    ++number;
    if (line.empty() || line.front() == '#') continue;
    const auto arrow = line.find("=>");
    REQUIRE_MESSAGE(arrow != std::string::npos, name << ":" << number << ": no => in it");
    cases.push_back({number, trimmed(line.substr(0, arrow)), trimmed(line.substr(arrow + 2))});
  }
  REQUIRE_MESSAGE(!cases.empty(), "no cases in " << name);
  return cases;
}

Typed typed(const std::string& input) {
  const bool prompt = input.front() == '?';
  const auto colon = input.find(':');
  REQUIRE(colon != std::string::npos);
  const std::size_t from = prompt ? 1 : 0;
  return {dimension_named(input.substr(from, colon - from)), prompt ? Input::prompt : Input::sheet,
          trimmed(input.substr(colon + 1))};
}

}  // namespace sheaf::test
