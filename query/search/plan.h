// SPDX-License-Identifier: GPL-2.0-or-later
// A reading as queries of the index. They are built of terms, never of text, so that nothing a
// person types can be a syntax error. Internal to search.
#pragma once

#include <string>
#include <vector>

#include "query/library/index.h"
#include "query/search/known_terms.h"
#include "query/search/reading.h"
#include "query/search/size_terms.h"

namespace sheaf {

// How strictly the entry must answer the reading. Each relaxation is a step of its own, and what it
// finds is never the answer, only what comes near it.
struct Demand {
  bool machine = true;
  bool year = true;
  bool figures = true;
  bool figures_named = true;  // false: an entry that is a figure itself answers whatever it is called
  bool figures_all = true;    // false: one of the figures asked for is enough
  bool sides_stated = true;   // false: an entry may leave the side open, but may not be of the other; what
                              // is at the front or the rear always says so
  bool sizes_exact = true;    // false: sizes and figures within the reach of a worn part or a near value
  bool table_rows = true;     // false: only what some machine has
  bool stages = false;        // true: all stages of a torque asked for, within what the index knows of them
  bool names_whole = true;    // false: the words of a part's name may be found apart from each other
  int without_part = -1;      // this part is left out
};

// What is called so; narrowed to what may answer.
struct Likely {
  Xapian::Query called, narrowed;
};

struct Plan {
  bool walks_values = false;                        // looks through the values of entries, which takes long
  Xapian::Query all = Xapian::Query::MatchNothing;  // what may answer
  // Parts of it, each within the next: what is called most like it comes first, and is quick to ask.
  std::vector<Likely> likely;
};

// For the library whose terms and sizes those are; matches nothing if the reading names nothing. Throws
// Xapian::Error if its index is damaged.
Plan plan_query(const QuestionReading& reading, const Demand& demand, KnownTerms& terms, SizeTerms& sizes);

// What fits the machine and the year, and has one of these terms; the more of them, the greater its weight by
// their number.
Xapian::Query plan_terms(const QuestionReading& reading, const std::vector<std::string>& of_words,
                         KnownTerms& terms);

// By each of which an entry may be found that holds a word of the question, whatever else was asked.
std::vector<std::string> terms_of_words(const QuestionReading& reading);

}  // namespace sheaf
