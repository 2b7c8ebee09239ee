// SPDX-License-Identifier: GPL-2.0-or-later
// From words to whole sheets: the assemblies that a job is about.
//
//   find_sheets({.words = "fork muleback 2013"}, lexicon)
//   find_sheets({.words = "sorvane-41-rod"}, lexicon)                   a sheet's own name, or an entry's
//   address find_sheets({.filters = {.machine = "muleback", .year = 2013}}, lexicon)   every assembly of the
//   machine
#pragma once

#include <string>
#include <vector>

#include "query/search/find.h"

namespace sheaf {

struct SheetRequest {
  std::string words;
  Filters filters;
};

// A sheet with the entries that fit. Where no year, frame number or market was named, several entries may
// have one address: variants that are still open.
struct SheetHit {
  std::size_t library = 0;  // index into Lexicon::libraries()
  SheetRecord sheet;
};

struct SheetFindings {
  QuestionReading reading;
  std::vector<SheetHit> sheets;  // by name; one of several libraries that have it: the first
  std::vector<SheetHit> near;    // without entries: the same words and machine, but other years
};

// Fails if a filter cannot be read, or a library is damaged.
Result<SheetFindings> find_sheets(const SheetRequest& request, Lexicon& lexicon);

}  // namespace sheaf
