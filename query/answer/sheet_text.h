// SPDX-License-Identifier: GPL-2.0-or-later
// A whole sheet: what it is of, how to be sure of it, and every entry on one line.
#pragma once

#include "query/answer/json.h"
#include "query/answer/page.h"
#include "query/library/record.h"

namespace sheaf {

void write_text(Page& page, const SheetRecord& sheet);
void write_json(JsonWriter& json, const SheetRecord& sheet);

}  // namespace sheaf
