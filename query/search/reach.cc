// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/reach.h"

#include <algorithm>
#include <cmath>

namespace sheaf {

double base_per_unit(const Unit& unit) {
  return static_cast<double>(unit.factor.numerator) / static_cast<double>(unit.factor.denominator);
}

double exact_reach(const Figure& figure) {
  if (!figure.nominal || figure.nominal->denominator != 1) return 0;
  return 0.5 * std::pow(10.0, -static_cast<double>(figure.nominal->places)) * base_per_unit(*figure.unit);
}

double exact_reach(const LengthAsked& length) {
  const bool is_metric = length.figure.unit->symbol == "mm";
  return is_metric ? same_length : std::max(length.half_digit, same_length);
}

}  // namespace sheaf
