// SPDX-License-Identifier: GPL-2.0-or-later
// Random figures of every form and unit, the same ones in every run.
#pragma once

#include <random>

#include "query/quantity/figure.h"

namespace sheaf::test {

class RandomFigures {
 public:
  explicit RandomFigures(unsigned seed) : random_(seed) {}

  int below(int limit) { return std::uniform_int_distribution<int>(0, limit - 1)(random_); }

  // A decimal of 1 to `longest` digits and up to six places, or now and then a fraction; never negative.
  Number number(int longest = 9);
  const Unit& unit();
  // Another unit of the same dimension (the same one, where there is no other).
  const Unit& other_unit(const Unit& unit);
  // A figure as a parser could have read it.
  Figure figure();

 private:
  std::mt19937_64 random_;
};

}  // namespace sheaf::test
