// SPDX-License-Identifier: GPL-2.0-or-later
// What stands in the cells of a card's tables, and below its rows. Internal to card_document.cc.
#pragma once

#include <vector>

#include "query/answer/card.h"
#include "query/answer/card_record.h"
#include "query/answer/document.h"

namespace sheaf {

// The value of every stage, then the same in the shop's unit, marked as derived.
Passage figure_cell(const Answer& answer);
Passage figure_cell(const Value& value);
// The value, its band and its conditions as words on one line: "28 N·m (25–31), per leg".
std::string figure_words(const Value& value);

// The name, what changes the act, and what identifies it.
Passage name_cell(const CardEntry& entry);

// Boxes and blanks for one deed, a line for each stage and place.
Passage deed_cell(const CardEntry& entry, Deed deed, const CardRecord* record);
// Blanks, with boxes beside them for whether the value passes; ticked where the record says it does.
Passage measure_cell(const CardEntry& entry, const CardRecord* record);

// The cautions that all of them have: said once, over the table.
using Cautions = std::vector<CautionRecord>;
Cautions shared_cautions(const std::vector<CardEntry>& entries);
std::vector<Remark> remarks_of(const Cautions& cautions);

// What belongs to this entry alone: withdrawal, cautions that are not shared, disputes, status, notes.
std::vector<Remark> remarks_of(const CardEntry& entry, const Cautions& shared);

}  // namespace sheaf
