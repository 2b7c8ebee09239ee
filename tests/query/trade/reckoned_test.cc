// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/reckoned.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <random>

using namespace sheaf;

namespace {

std::string text(double value, int digits = 3) {
  auto number = reckoned_number(value, digits);
  return number ? to_text(*number) : "failure";
}

}  // namespace

TEST_CASE("a reckoned value has as many digits as asked for") {
  CHECK(text(25.8146) == "25.8");
  CHECK(text(25731) == "25700");
  CHECK(text(0.0123456) == "0.0123");
  CHECK(text(9.996) == "10.0");
  CHECK(text(99.96, 3) == "100");
  CHECK(text(-3.14159, 4) == "-3.142");
  CHECK(text(0) == "0");
  CHECK(text(5, 1) == "5");
  CHECK(text(1e15, 9) == "1000000000000000");
  CHECK(text(0.000001, 9) == "0.00000100000000");
}

TEST_CASE("what cannot be a figure is refused") {
  for (double value : {std::nan(""), std::numeric_limits<double>::infinity(), 1.1e15, 1e-7, -1e16})
    CHECK(text(value) == "failure");
  CHECK(text(1, 0) == "failure");
  CHECK(text(1, 10) == "failure");
}

TEST_CASE("rounding is to nearest, for any value") {
  std::mt19937_64 random(3);
  std::uniform_real_distribution<double> exponent(-5.9, 14.9);
  for (int round = 0; round < 20000; ++round) {
    const double value = std::pow(10, exponent(random));
    const int digits = 1 + static_cast<int>(random() % 9);
    const auto number = reckoned_number(value, digits);
    REQUIRE(number);
    CHECK(std::abs(approximate(*number) / value - 1) <= 0.500001 * std::pow(10, 1 - digits));
  }
}

TEST_CASE("a band becomes a range in its unit") {
  const Unit& unit = **unit_from("N·m", Dimension::torque);
  CHECK(to_text(*reckoned(Band{17.234, 36.77}, unit)) == "17.2..36.8 N·m");
  CHECK(to_text(*reckoned(28.44, unit)) == "28.4 N·m");
  CHECK(to_text(*reckoned(Band{28.44, 28.441}, unit)) == "28.4 N·m");
  CHECK_FALSE(reckoned(Band{1, std::nan("")}, unit));
}
