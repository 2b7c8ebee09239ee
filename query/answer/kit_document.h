// SPDX-License-Identifier: GPL-2.0-or-later
// A kit laid out for print, and its lists as a card takes them over.
#pragma once

#include "query/answer/document.h"
#include "query/answer/json.h"
#include "query/answer/kit.h"

namespace sheaf {

FormTable buying_table(const Kit& kit);
std::vector<Block> picking_lists(const Kit& kit);

// The libraries' own facts stand at the foot.
Document document_of(const Kit& kit, const std::vector<Library*>& libraries);

void write_json(JsonWriter& json, const Kit& kit);
// A row for each thing to buy or lay out, below one that names the columns.
std::string csv_of(const Kit& kit);

// "orrindale, data of 2026-10-07, digest 1a2b3c4d5e6f…"
std::string library_line(const LibraryFacts& facts);

}  // namespace sheaf
