// SPDX-License-Identifier: GPL-2.0-or-later
// Threads by their designation, and by what caliper and pitch gauge say of a screw. Internal to matching.
#pragma once

#include "query/answer/match.h"

namespace sheaf {

// None if the text is no thread and no part was named. What reads as a designation that no table has
// ("0.311 x 18", "M7.9x1.25") is taken as measured. Fails on what was called a thread and cannot be one.
Result<std::optional<Matches>> match_thread(const PartNamed& named, const MatchLimits& limits, Shelf& shelf);

}  // namespace sheaf
