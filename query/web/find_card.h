// SPDX-License-Identifier: GPL-2.0-or-later
// The card that words or a sheet's name lead to, as `sheaf card` finds it; or which of several must be named.
#pragma once

#include <optional>

#include "query/answer/card.h"
#include "query/answer/sheet_choice.h"
#include "query/web/asked.h"

namespace sheaf {

struct FoundCard {
  std::optional<Card> card;
  std::optional<SheetChoice> choice;  // instead
};

Result<FoundCard> find_card(const Asking& asking, const std::string& words);

}  // namespace sheaf
