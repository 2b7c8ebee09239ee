// SPDX-License-Identifier: GPL-2.0-or-later
// An entry as a ring that can be compared, and as a part that is said. Internal to matching.
#pragma once

#include "query/answer/match.h"

namespace sheaf {

// Its dimensions in mm; none if the entry states none.
std::optional<SizeRow> size_row(const EntryRecord& entry);

RingShape shape_of(const EntryRecord& entry);
std::optional<SealUse> use_of(const EntryRecord& entry);

// To a thousandth: nobody measures finer, and inches come out uneven.
std::string mm_text(double mm);

// "41 × 54 × 11", "43 × 55 × 9.5/10.5", "34.5 × 2.65".
std::string shown_size(const SizeRow& row, RingShape shape);

// Everything but what compares it.
MatchedPart part_from(EntryRecord entry);

}  // namespace sheaf
