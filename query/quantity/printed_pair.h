// SPDX-License-Identifier: GPL-2.0-or-later
// Two figures printed side by side ("35 N·m (26 lbf·ft)"): can both be true, and if not, what slip
// explains it?
#pragma once

#include <string>

#include "query/quantity/figure.h"

namespace sheaf {

enum class Slip {
  none, not_converted, factor_10, factor_12, factor_1_356, factor_9_81, swapped_digits, unexplained,
};

struct PairVerdict {
  bool agrees = false;
  Slip slip = Slip::none;
  std::string message;  // "35 N·m is 25.8 lbf·ft; 35 was printed in both units"
};

// They agree when the rounding intervals of their digits meet after exact conversion. The units are
// of one dimension; otherwise they do not agree, and the message says so.
PairVerdict compare_printed(const Figure& primary, const Figure& printed);

}  // namespace sheaf
