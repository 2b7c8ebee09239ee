// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/sheet/suggestion.h"

#include <doctest/doctest.h>

#include <array>

using namespace sheafc;

TEST_CASE("only what is near is suggested") {
  constexpr std::array<std::string_view, 4> words = {"torque", "state", "name", "side"};
  CHECK(did_you_mean("torqe", words) == "; did you mean 'torque'?");
  CHECK(did_you_mean("x", words) == "");
}

TEST_CASE("a list in words") {
  constexpr std::array<std::string_view, 3> three = {"a", "b", "c"};
  CHECK(any_of(three) == "a, b or c");
  CHECK(any_of(std::span(three).first(1)) == "a");
  CHECK(any_of({}) == "");
}
