// SPDX-License-Identifier: GPL-2.0-or-later
// Conversion that never leaves the band it came from.
#pragma once

#include <optional>
#include <vector>

#include "query/quantity/figure.h"

namespace sheaf {

// A figure in another unit. The nominal is rounded to nearest at the significance of the source; a
// stated bound is rounded inward, so that the converted band lies inside the original one; a figure
// without a stated tolerance gets none, and its conversion keeps within half a last digit of it.
struct Converted {
  Figure figure;
  bool exact = false;  // no digit was rounded
};

// Fails when the units are of different dimensions (and says what each measures), or when the result
// does not fit. 35 N·m -> 25.8 lbf·ft; 25..31 N·m -> 18.5..22.8 lbf·ft.
Result<Converted> convert(const Figure& figure, const Unit& unit);

// The value to set on a scale that is marked in steps of `step` (in `unit`).
struct Setting {
  Number value;                // nearest step inside the band to the nominal, or nearest of all
  bool inside = false;         // false: no step lies in the band; value is the nearest that is marked
};
Result<Setting> set_on_scale(const Figure& figure, const Unit& unit, const Number& step);

// The units of its dimension in which a workshop would want to see it, without its own.
std::vector<const Unit*> useful_units(const Unit& unit);

}  // namespace sheaf
