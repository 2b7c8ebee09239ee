// SPDX-License-Identifier: GPL-2.0-or-later
// What matches, for a person and for a program (JSON.md).
#pragma once

#include "query/answer/json.h"
#include "query/answer/match.h"
#include "query/answer/page.h"

namespace sheaf {

// So many of what is NOT the same are shown; the rest is counted.
void write_text(Page& page, const Matches& matches, std::size_t most_near);
void write_json(JsonWriter& json, const Matches& matches);

}  // namespace sheaf
