// SPDX-License-Identifier: GPL-2.0-or-later
// From a question to the entries that answer it, over one library or several.
//
//   Lexicon lexicon({&library});
//   auto found = find(Request{.words = "top plug muleback 2013"}, lexicon);
//
// A machine and a year are filters: an entry that does not fit them is never among the answers.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "query/search/lexicon.h"
#include "query/search/reading.h"

namespace sheaf {

// What the words are narrowed by. Each is read as the same words in the question would be.
struct Filters {
  std::string machine = {}, frame = {}, market = {}, kind = {}, thread = {}, drive = {}, between = {},
              assembly = {};
  int year = 0;
};

struct Request {
  std::string words = {};
  Filters filters = {};
  std::size_t limit = 20;     // answers given; the rest is counted
  bool offers_near = true;    // false while a question is being typed: nothing but its answers is looked for
  std::string count_by = {};  // one of all_facets() (count_by.h): Findings::counts is filled
};

// An entry that was found, and what keeps it from being the answer, if anything does.
struct Hit {
  EntryId id = 0;
  std::size_t library = 0;   // index into Lexicon::libraries()
  EntryPtr entry = {};       // of what is found there is always one,
  SheetPtr sheet = {};       // and its sheet, without entries
  double cost = 0;           // how much of its name was not asked for, and of the question it does not say
  bool by_name = true;       // its names hold every part asked for, not only its notes
  bool names_some = true;    // or at least one of them
  int aspects_absent = 0;    // words asked such as "diameter", which its names do not hold
  std::string differs = {};  // "fits 2016 on", "inside +2 mm"; empty for an answer
};

// Why the entries in Findings::near are not the answer.
enum class Near {
  none,
  other_years,
  other_machines,
  other_sides,
  figure_not_stated,
  other_sizes,
  fewer_words,
  unknown_words
};

struct FacetCount {
  std::string value;
  std::size_t entries = 0;
};

struct ShelfSheet {
  std::size_t library = 0;
  SheetRecord sheet;  // without entries
};

struct Findings {
  QuestionReading reading;
  std::vector<ShelfSheet> shelf;  // instead of all that follows, where only sheets were asked for
  std::vector<Hit> answers;       // best first; within equals by library and by place on the sheets
  std::vector<Hit> also;          // fit as well, but are called more or other than what was asked
  std::vector<Hit> near;          // not the answer: each says what differs
  Near why_near = Near::none;
  bool weighed = false;  // nothing held all that was asked: the answers, if there are any, are the likeliest
  std::vector<std::string> dropped;  // words without which `near` was found
  std::size_t total = 0;             // all answers, shown or not
  bool total_is_exact = true;
  std::vector<FacetCount> counts;  // by Request::count_by
};

// Fails if a filter cannot be read, or a library is damaged.
Result<Findings> find(const Request& request, Lexicon& lexicon);

std::string xapian_version();

}  // namespace sheaf
