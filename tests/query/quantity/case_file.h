// SPDX-License-Identifier: GPL-2.0-or-later
// Cases kept as text, one a line: "INPUT => EXPECTED", "#" for remarks. A new case is a line, no C++.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/quantity/figure.h"

namespace sheaf::test {

struct Case {
  int line = 0;
  std::string input, expected;
};

// All cases of a file below tests/query/quantity/; fails the test if there are none.
std::vector<Case> read_cases(const std::string& name);

// "torque: 28 Nm" taken apart; "any: ..." asks for no dimension, "?" stands before what a prompt is asked.
struct Typed {
  std::optional<Dimension> dimension;
  Input input = Input::sheet;
  std::string text;
};
Typed typed(const std::string& input);

}  // namespace sheaf::test
