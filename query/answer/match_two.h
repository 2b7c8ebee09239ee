// SPDX-License-Identifier: GPL-2.0-or-later
// "6203 vs 6302": a second size or designation beside the first. Internal to matching.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "query/answer/match.h"

namespace sheaf {

// The two sides of "vs", "vs." or "versus"; none if there are not two.
std::optional<std::pair<std::string, std::string>> two_sides(std::string_view text);

// What fits the first; and among what is NOT the same, all that fits the second, with what it differs in.
Matches beside(Matches first, Matches second);

}  // namespace sheaf
