// SPDX-License-Identifier: GPL-2.0-or-later
// A reckoning for a person, and for a program (JSON.md).
#pragma once

#include "query/answer/json.h"
#include "query/answer/page.h"
#include "query/answer/reckon.h"

namespace sheaf {

void write_text(Page& page, const Reckoning& reckoning);
void write_json(JsonWriter& json, const Reckoning& reckoning);

// What a topic is given, one name a line, and an example.
void write_text(Page& page, const Topic& topic);
// All topics, one a line.
void write_topics(Page& page);

}  // namespace sheaf
