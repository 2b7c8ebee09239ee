// SPDX-License-Identifier: GPL-2.0-or-later
// What a sheet's rows share with those of other sheets: numbers, files, machines. A sheet can take the place of one
// of the same shape without a change to any other row.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <tuple>
#include <vector>

#include "query/library/record.h"

namespace sheafc {

struct RowShape {
  std::size_t entries = 0;
  std::array<std::size_t, 4> numbered{};  // how many sources, readings, sets of fits and of cautions
  std::vector<std::string> files;         // in the order in which they are named first
  std::vector<std::tuple<std::string, std::string, int, int>> machines;  // with their years
  friend bool operator==(const RowShape&, const RowShape&) = default;
};

RowShape row_shape_of(const sheaf::SheetRecord& sheet);

}  // namespace sheafc
