// SPDX-License-Identifier: GPL-2.0-or-later
// A card laid out for print, empty or with what a record holds filled in.
#pragma once

#include "query/answer/card.h"
#include "query/answer/card_record.h"
#include "query/answer/document.h"
#include "query/answer/json.h"

namespace sheaf {

// `record` may be null: a card to be filled in by hand.
Document document_of(const Card& card, const CardRecord* record);

// JSON.md describes every member.
void write_json(JsonWriter& json, const Card& card, const CardRecord* record);

}  // namespace sheaf
