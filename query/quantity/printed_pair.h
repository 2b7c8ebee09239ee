// SPDX-License-Identifier: GPL-2.0-or-later
// Two figures printed side by side ("35 N·m (26 lbf·ft)"): can both be true, and if not, what slip
// explains it?
#pragma once

#include <string>

#include "query/quantity/figure.h"

namespace sheaf {

enum class Slip {
  none,
  not_converted,   // the same number in both units
  factor_10,       // a decimal place
  factor_12,       // lbf·in for lbf·ft
  factor_1_356,    // N·m for lbf·ft, or converted twice
  factor_9_81,     // N·m for kgf·m
  swapped_digits,  // 28.5 for 25.8
  wrong_way,       // multiplied where it should have been divided
  other_unit,      // right in another unit of the dimension, which the message names
  unexplained,
};

struct PairVerdict {
  bool agrees = false;
  Slip slip = Slip::none;
  std::string message;  // "35 N·m is 25.8 lbf·ft; 35 was printed in both units". Empty if they agree
};

// They agree when the rounding intervals of their digits meet after exact conversion: ends with ends,
// nominal with nominal; a single value beside a range must lie in it. A printed end may also have been
// rounded inward, by less than one of its last digits. The units are of one dimension; otherwise they do
// not agree, and the message says so.
PairVerdict compare_printed(const Figure& primary, const Figure& printed);

}  // namespace sheaf
