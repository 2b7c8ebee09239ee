// SPDX-License-Identifier: GPL-2.0-or-later
// Where nothing holds all that was asked: each entry that holds some of it is weighed by what speaks for it,
// against the others and against there being no answer. Internal to search.
#pragma once

#include <optional>
#include <vector>

#include "query/search/evidence.h"

namespace sheaf {

struct Weighed {
  Hit hit;
  Evidence evidence;
  double chance = 0;  // that it is what was meant; those of all and of there being no answer are 1 together
  bool may_answer = true;  // false: it is of another unit, kind or machine than was asked for
};

struct Weighing {
  std::optional<Witness> witness;
  std::vector<Weighed> entries;  // the likeliest first
  Doubt doubt;
  double none = 1;  // the chance of there being no answer
};

Weighing weigh(const QuestionReading& reading, Searcher& searcher, Lexicon& lexicon);

// Fills Findings::answers if one entry, or two or three between which the reader must choose, are likely
// enough, and says in the reading what was left aside.
bool answer_by_weight(Findings& findings, Searcher& searcher, Lexicon& lexicon);

}  // namespace sheaf
