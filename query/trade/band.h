// SPDX-License-Identifier: GPL-2.0-or-later
// The least and the most that something may be, and the ranges in which a formula holds.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

#include "query/quantity/result.h"

namespace sheaf {

struct Band {
  double least = 0;
  double most = 0;

  bool holds(double value) const { return value >= least && value <= most; }
};

// One argument of a formula: what it is, and between which values the formula holds for it.
struct Argument {
  std::string_view what;  // "wire diameter"
  double value = 0;
  Band range;
  std::string_view unit;  // "mm", or empty
};

// The first argument outside its range, as a Failure that says both. A value that is no number (NaN)
// is outside every range.
std::optional<Failure> outside_range(std::initializer_list<Argument> arguments);

// A number for the text of a message: up to six digits, never a locale's.
std::string brief(double value);

}  // namespace sheaf
