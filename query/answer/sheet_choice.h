// SPDX-License-Identifier: GPL-2.0-or-later
// Where words for a job do not lead to one sheet: to none, and what came near, or to several, of which one
// must be named. Written as text and JSON, so that a card and a kit say it alike.
#pragma once

#include <string>
#include <vector>

#include "query/answer/json.h"
#include "query/answer/page.h"
#include "query/search/find_sheets.h"

namespace sheaf {

struct SheetChoice {
  std::string asked;
  QuestionReading reading;
  std::vector<SheetRecord> sheets;  // several that answer
  std::vector<SheetRecord> near;    // for other years than the one named
  std::string near_name;            // of a sheet whose name is nearly what was typed
};

// Looks for a near name only where nothing answers.
SheetChoice sheet_choice(SheetFindings found, std::string asked, const std::vector<Library*>& libraries);

void write_text(Page& page, const SheetChoice& choice);
std::string in_one_line(const SheetChoice& choice);
void write_json(JsonWriter& json, const SheetChoice& choice);  // a whole document

}  // namespace sheaf
