// SPDX-License-Identifier: GPL-2.0-or-later
// A record held against its card: what is still open, what lies beyond its limit, what has changed since.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "query/answer/card.h"
#include "query/answer/card_record.h"

namespace sheaf {

enum class Judgement {
  within,      // inside the limit, band or range
  beyond,      // outside of it
  unlimited,   // the sheet states nothing that it could be beyond
  unreadable,  // no figure of that dimension
};

// A measured or set value against what the sheet states of the entry; a bare number has the unit of the
// sheet. Exact: a value that equals its limit is within.
Judgement judge(const CardEntry& entry, std::string_view written);

enum class Weight { wrong, open, note };

struct Finding {
  Weight weight = Weight::note;
  std::string id;    // the item or entry that it is about; empty for the whole record
  std::string text;  // "inner tube run-out, left: 0.25 mm is beyond max 0.2 mm"
};

// Wrong first, then open in the order of the card, then notes.
std::vector<Finding> check_record(const CardRecord& record, const Card& card);

// What the card calls an item: "fork top plug, tightened, left".
std::string name_of(const Card& card, const CardItem& item);

}  // namespace sheaf
