// SPDX-License-Identifier: GPL-2.0-or-later
// The least and the most that a field states, as numbers in SI base units, and what is said beside them: for
// searching and sorting, never for what is shown.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "query/library/record.h"
#include "query/quantity/unit.h"

namespace sheaf {

struct FieldBand {
  Dimension dimension;
  double least = 0;  // an open end is infinite
  double most = 0;
};

struct FieldFigures {
  // One for each dimension that the figures have, in the order in which they stand; all stages of a
  // tightening together. None if the field holds no figure.
  std::vector<FieldBand> bands;
  std::vector<std::string> conditions;  // "on the side stand", "spring out"
};

// `kind` is that of its entry.
FieldFigures figures_of(std::string_view kind, const FieldRecord& field);

}  // namespace sheaf
