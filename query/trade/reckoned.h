// SPDX-License-Identifier: GPL-2.0-or-later
// From what a formula gave to a figure that can be shown: so many significant digits, and no more than
// the formula is good for.
#pragma once

#include "query/quantity/figure.h"
#include "query/quantity/result.h"
#include "query/trade/band.h"

namespace sheaf {

// The value rounded to nearest at 1 to 9 significant digits; digits before the point are never cut off
// but rounded to zeros (25731 to three is 25700). Fails on what is no finite number, and beyond 10^15
// or below 10^-6.
Result<Number> reckoned_number(double value, int digits);

// A nominal, or a range from least to most, in the unit. Both ends of a range are rounded to nearest:
// it says how far the result spreads, it is no tolerance to be kept.
Result<Figure> reckoned(double value, const Unit& unit, int digits = 3);
Result<Figure> reckoned(Band band, const Unit& unit, int digits = 3);

}  // namespace sheaf
