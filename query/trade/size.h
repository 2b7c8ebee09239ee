// SPDX-License-Identifier: GPL-2.0-or-later
// Sizes of seals, bearings, washers and tubes, as people write them, and the one spelling of each.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "query/quantity/number.h"
#include "query/quantity/result.h"
#include "query/trade/found.h"

namespace sheaf {

// "41x54x11", "41 × 54 × 11", "41 54 11", "43*55*9.5/10.5", "1.69 x 2.2 in", "ø43": one to four
// dimensions in the order written; a stepped last dimension keeps both heights.
struct Size {
  std::array<Number, 4> value{};
  int count = 0;
  std::optional<Number> step;  // the second height of "9.5/10.5"
  std::string unit = "mm";     // or "in"
};

// The whole text must be a size. Spaces alone part the dimensions at a prompt only. One dimension
// alone is a size where a diameter sign or a unit of length says so ("ø43", "43 mm").
Result<Size> parse_size(std::string_view text, Input input);

// The longest size of two dimensions or more, parted by x × * or "by", at the start of the text.
std::optional<Found<Size>> size_at(std::string_view text, Input input);

std::string to_text(const Size& size);  // "41x54x11", "43x55x9.5/10.5", "1.5x2.0 in"

// For matching by number: trailing zeros gone; inches are marked, never turned into mm.
std::string size_key(const Size& size);  // "41x54x11", "43x55x9.5/10.5", "1.5x2in"

// Dimension `index` in mm. index < count.
double dimension_mm(const Size& size, int index);

}  // namespace sheaf
