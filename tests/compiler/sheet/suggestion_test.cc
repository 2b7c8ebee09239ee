// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/sheet/suggestion.h"

#include <doctest/doctest.h>

#include <array>

using namespace sheafc;

TEST_CASE("the distance counts insertions, deletions, changes and swaps") {
  CHECK(edit_distance("torque", "torque", 2) == 0);
  CHECK(edit_distance("torqe", "torque", 2) == 1);
  CHECK(edit_distance("torqeu", "torque", 2) == 1);
  CHECK(edit_distance("tork", "torque", 2) == 3);
  CHECK(edit_distance("", "ab", 2) == 2);
  CHECK(edit_distance(std::string(101, 'a'), std::string(101, 'a'), 2) == 3);
}

TEST_CASE("only what is near is suggested, and short words must be nearer") {
  constexpr std::array<std::string_view, 4> words = {"torque", "state", "name", "side"};
  CHECK(nearest("torqe", words) == "torque");
  CHECK(nearest("satte", words) == "state");
  CHECK(nearest("nmae", words) == "name");
  CHECK(nearest("nnme", words) == "name");
  CHECK(nearest("nxyz", words) == "");
  CHECK(nearest("viscosity", words) == "");
  CHECK(did_you_mean("torqe", words) == "; did you mean 'torque'?");
  CHECK(did_you_mean("x", words) == "");
}

TEST_CASE("a list in words") {
  constexpr std::array<std::string_view, 3> three = {"a", "b", "c"};
  CHECK(any_of(three) == "a, b or c");
  CHECK(any_of(std::span(three).first(1)) == "a");
  CHECK(any_of({}) == "");
}
