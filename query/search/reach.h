// SPDX-License-Identifier: GPL-2.0-or-later
// How near is the same, and how near is worth offering. Internal to search.
#pragma once

#include "query/search/reading.h"

namespace sheaf {

// mm: what is nearer is the same number.
inline constexpr double same_length = 0.0005;
// mm: a caliper's own uncertainty; common practice, no source.
inline constexpr double caliper = 0.1;
// mm: what two readings of a caliper and a worn or swollen part make together; common practice, no source.
inline constexpr double near_length = 1.0;
// mm: of each dimension of a whole size, as in a match.
inline constexpr double near_size = 2.0;
// How far a figure may be off and still be offered as near, as a share of it.
inline constexpr double near_share = 0.10;

// mm: a measure typed in mm is that number; one in inches is a conversion, the same within half of its
// last digit.
double exact_reach(const LengthAsked& length);
// Half of the last digit of the figure's nominal, in the base unit of its dimension.
double exact_reach(const Figure& figure);
// The base units in one unit; offsets of temperatures do not count.
double base_per_unit(const Unit& unit);

}  // namespace sheaf
