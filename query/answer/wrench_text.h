// SPDX-License-Identifier: GPL-2.0-or-later
// What to set, as text and as JSON. JSON.md describes every member.
#pragma once

#include "query/answer/json.h"
#include "query/answer/page.h"
#include "query/answer/wrench.h"

namespace sheaf {

// `entry` is what the torque is of; null where a bare torque was asked for.
void write_text(Page& page, const WrenchAnswer& answer, const Crib& crib, const Answer* entry);
void write_json(JsonWriter& json, const WrenchAnswer& answer, const Crib& crib, const Answer* entry);

}  // namespace sheaf
