// SPDX-License-Identifier: GPL-2.0-or-later
// What to set for a torque or an entry, as `sheaf wrench` chooses it, on the shop's wrenches or on the one
// that the asker describes.
#pragma once

#include <optional>
#include <vector>

#include "query/answer/wrench.h"
#include "query/web/asked.h"

namespace sheaf {

struct FoundWrench {
  WrenchAnswer answer;
  std::optional<Answer> entry;
};

// Of q: a torque, once for each of its readings, or an address, once for each variant.
Result<std::vector<FoundWrench>> find_wrench(const Asking& asking, const Crib& crib);

}  // namespace sheaf
