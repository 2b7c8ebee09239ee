// SPDX-License-Identifier: GPL-2.0-or-later
// Conversion that never leaves the band it came from.
#pragma once

#include <optional>
#include <vector>

#include "query/quantity/figure.h"

namespace sheaf {

// A figure in another unit, rounded once from the exact value. The figure converted is the primary one,
// what comes out is derived, and is never converted again.
//
// Digits: one step of the last place shown is never more than one step of the source's last place, so
// that the conversion keeps within half a last digit of it (35 N·m is 25.8 lbf·ft, not 26 and not
// 25.8146); at least three digits are shown (1 in is 25.4 mm, not 25); whole numbers are never cut to
// tens. Zeros that no digit of the source earns are dropped from an exact result. A fraction counts as
// written to three places; the zeros of a round distance or time count for nothing.
//
// The nominal is rounded to nearest (a half away from zero), and into the band where it would leave it; a
// stated bound is rounded inward, so that the converted band lies inside the original one; a figure
// without a stated tolerance gets none.
struct Converted {
  Figure figure;
  bool exact = false;  // no digit was rounded
};

// Fails when the units are of different dimensions (and says what each measures), or when the result
// does not fit. 35 N·m -> 25.8 lbf·ft; 25..31 N·m -> 18.5..22.8 lbf·ft.
Result<Converted> convert(const Figure& figure, const Unit& unit);

// For columns that align: the decimal places in which convert() shows the figure in the unit, of the same
// dimension (before zeros are dropped), and a single value rounded to so many places (0..15).
int places_in(const Figure& figure, const Unit& unit);
std::optional<Number> convert_to_places(const Quantity& quantity, const Unit& unit, int places);

// A statement in another unit: every stage that is in such a unit, the angles as they are; the printed
// pair is dropped. Between mm²/s and Saybolt seconds it needs the temperature that the statement gives.
struct ConvertedStatement {
  Statement statement;
  bool exact = false;
};
Result<ConvertedStatement> convert(const Statement& statement, const Unit& unit);

// The value to set on a scale that is marked in steps of `step` (in `unit`). Without a nominal it aims at
// the middle of the band; a lone minimum or maximum is met from inside.
struct Setting {
  Number value;         // nearest step inside the band to the nominal, or nearest of all
  bool inside = false;  // false: no step lies in the band; value is the nearest that is marked
  bool stated = false;  // false: the source states no band, and inside means within half its last digit
};
Result<Setting> set_on_scale(const Figure& figure, const Unit& unit, const Number& step);

// The units of its dimension in which a workshop would want to see it, without its own.
std::vector<const Unit*> useful_units(const Unit& unit);

}  // namespace sheaf
