// SPDX-License-Identifier: GPL-2.0-or-later
// A batch of measured parts: a CSV comes in, and goes out again row for row with what matches each.
//
// Cells are parted by commas, semicolons or tabs, whichever the first row has (semicolons and tabs before
// commas). A first row without a digit names the columns: part, size, inside, outside, height (or id, od,
// width, section); others are carried along. Without such a row, the cells of a row are read together.
#pragma once

#include "query/answer/match.h"

namespace sheaf {

struct MatchedBatch {
  std::string csv;  // the rows as they came, and behind each: verdict, size, name, address, count, number to
                    // order, differs, others, note, fault
  std::size_t rows = 0;  // of data, blank ones left out
  std::size_t faults = 0;
  std::size_t found = 0;
};

// Faults are marked in their rows; a Failure only where the libraries cannot be read.
Result<MatchedBatch> match_csv(std::string_view text, const MatchLimits& limits,
                               const std::vector<Library*>& libraries);

}  // namespace sheaf
