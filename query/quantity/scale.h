// SPDX-License-Identifier: GPL-2.0-or-later
// From one unit to another of its dimension: value · factor + shift, both exact fractions in lowest terms.
// The compiler works all of them out from the unit table.
#pragma once

#include <optional>

#include "query/quantity/exact.h"
#include "query/quantity/unit.h"

namespace sheaf {

struct Scale {
  Fraction factor{1, 1};
  Fraction shift{0, 1};
  // The fewest decimal places (negative: tens, hundreds) at which one step is no more than the factor.
  int places = 0;
  // The decimal places of the power of ten nearest to the factor.
  int nearest_places = 0;
  bool exact = true;  // neither unit's size is rounded against the other's
};

// The units are of one dimension, and both from the table.
const Scale& scale_between(const Unit& from, const Unit& to);

// The value in the other unit; nullopt if it is too long to be held exactly.
std::optional<Fraction> apply(const Scale& scale, const Fraction& value);

}  // namespace sheaf
