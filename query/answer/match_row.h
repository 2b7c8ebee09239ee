// SPDX-License-Identifier: GPL-2.0-or-later
// An entry as a ring that can be compared, and as a part that is said. Internal to matching.
#pragma once

#include "query/answer/match.h"
#include "query/trade/size.h"

namespace sheaf {

// Its dimensions in mm; none if the entry states none.
std::optional<SizeRow> size_row(const EntryRecord& entry);

// The same of a size alone; none where it has not as many dimensions as such a ring.
std::optional<SizeRow> row_from_size(const Size& size, RingShape shape);

RingShape shape_of(const EntryRecord& entry);
std::optional<SealUse> use_of(const EntryRecord& entry);

// To a thousandth: nobody measures finer, and inches come out uneven.
std::string mm_text(double mm);

// "41 × 54 × 11", "43 × 55 × 9.5/10.5", "34.5 × 2.65".
std::string shown_size(const SizeRow& row, RingShape shape);

// Everything but what compares it.
MatchedPart part_from(EntryRecord entry);

// Which number to order today (supersession.h), for parts that fit. Fails on a damaged library.
std::optional<Failure> add_numbers(std::vector<MatchedPart>& parts, const std::vector<Library*>& libraries);

}  // namespace sheaf
