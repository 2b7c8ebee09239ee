// SPDX-License-Identifier: GPL-2.0-or-later
// What somebody measured on a seal, an O-ring or a bearing: up to three dimensions, named or in order.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/quantity/result.h"
#include "query/trade/size.h"

namespace sheaf {

// The dimensions of a ring: its hole, its outside and its height. A seal's are shaft, bore and width.
enum class Role { inside, outside, height };
std::string_view name_of(Role role);  // "inside", "outside", "height"

// In mm. Without roles the dimensions stand in the order written, which people do not keep to.
struct Measured {
  std::vector<double> mm;               // one to three
  std::vector<Role> roles;              // one for each, or none
  std::optional<double> second_height;  // of a stepped ring
};

// ".433" as "0.433", wherever a number begins so, as inch calipers and their owners write it.
std::string with_leading_zeros(std::string_view text);

// "41 x 54 x 11", "43 55 9,5", "1.69 x 2.2 in", "43*55*9.5/10.5", "ø43", "55.3 od",
// "id 43 od 55.3", "43 inside, 9.5 high", "55.3". A lone number is a measurement here, in mm. A unit at
// the end alone is that of all.
Result<Measured> parse_measured(std::string_view text, Input input);

// Of a size of one to three dimensions, in the order written.
Result<Measured> measured_from(const Size& size);

}  // namespace sheaf
