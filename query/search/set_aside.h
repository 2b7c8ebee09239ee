// SPDX-License-Identifier: GPL-2.0-or-later
// Words that no entry holds together with the others. Who knows the machine and the part answers from these
// and says which words he left aside; he does not where one of them may be what names the part. Internal to
// search.
#pragma once

#include "query/search/searcher.h"

namespace sheaf {

// For a question that found nothing: leaves aside what only describes, the words that the glossary does not know,
// and one part that only says where; fills Findings::answers if the rest is called just so in one place of one
// machine. Else with its nuts read as bolts, or each of its words by itself, if one entry alone comes near.
bool answer_without_loose_words(Findings& findings, Searcher& searcher);

// For a question that names no machine, with a word that nobody knows beside a designation: the rows of tables
// that have it.
bool answer_by_designation(Findings& findings, Searcher& searcher);

// Whether all hits are of one assembly, or of the same at both ends of the machine.
bool are_of_one_place(const std::vector<Hit>& hits);

// Of hits, best first, those that are called just so and no worse than the best; none if the best is not. A step is none
// where the question asks for a figure ("seat height").
std::vector<Hit> called_just(std::vector<Hit> hits, const QuestionReading& asked);

}  // namespace sheaf
