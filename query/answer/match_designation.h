// SPDX-License-Identifier: GPL-2.0-or-later
// Matching by what is marked on a part: a bearing's designation, an O-ring's code, a thread. Internal to
// matching.
#pragma once

#include "query/answer/match.h"

namespace sheaf {

// None if the text is no designation, and may be a size.
Result<std::optional<Matches>> match_designation(const PartNamed& named, const MatchLimits& limits,
                                                 Shelf& shelf);

}  // namespace sheaf
