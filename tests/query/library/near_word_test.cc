// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/near_word.h"

#include <doctest/doctest.h>

#include <array>

using namespace sheaf;

TEST_CASE("letters too many, too few, others and swapped ones are slips") {
  CHECK(slips_between("torque", "torque") == 0);
  CHECK(slips_between("torqe", "torque") == 1);
  CHECK(slips_between("torqeu", "torque") == 1);
  CHECK(slips_between("tork", "torque") == 3);
  CHECK(slips_between("", "ab") == 2);
  CHECK(slips_between(std::string(61, 'a'), std::string(61, 'a')) > 3);
}

TEST_CASE("only what is near is offered, and short words must be nearer") {
  constexpr std::array<std::string_view, 4> words = {"torque", "state", "name", "side"};
  CHECK(near_word("torqe", words) == "torque");
  CHECK(near_word("satte", words) == "state");
  CHECK(near_word("nmae", words) == "name");
  CHECK(near_word("nnme", words) == "name");
  CHECK(near_word("nxyz", words) == "");
  CHECK(near_word("viscosity", words) == "");
}
