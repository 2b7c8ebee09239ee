// SPDX-License-Identifier: GPL-2.0-or-later
// The kit for the jobs of q, as `sheaf kit` finds it; or which of several sheets must be named.
#pragma once

#include <optional>

#include "query/answer/kit.h"
#include "query/answer/sheet_choice.h"
#include "query/web/asked.h"

namespace sheaf {

struct FoundKit {
  std::optional<Kit> kit;
  std::optional<SheetChoice> choice;  // instead
};

Result<FoundKit> find_kit(const Asking& asking);

}  // namespace sheaf
