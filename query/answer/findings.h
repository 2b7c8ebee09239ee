// SPDX-License-Identifier: GPL-2.0-or-later
// What a search found, as answers ready to be said.
#pragma once

#include <string>
#include <vector>

#include "query/answer/answer.h"
#include "query/answer/conversion.h"
#include "query/search/find.h"

namespace sheaf {

struct FoundAnswer {
  Answer answer;
  std::string differs;  // what keeps it from being the answer; empty for an answer
};

struct FoundAnswers {
  std::string question;
  QuestionReading reading;
  std::vector<Answer> answers;
  std::vector<Answer> also;
  std::vector<FoundAnswer> near;
  Near why_near = Near::none;
  std::vector<ShelfSheet> shelf;         // the question was for whole sheets
  std::optional<Conversion> conversion;  // the question was one: nothing was looked for
  std::vector<std::string> notices;      // sentences: what was read otherwise than typed, what was left out
  std::size_t total = 0;
  bool total_is_exact = true;
  std::string counted_by;  // a facet, where counts were asked for instead of answers
  std::vector<FacetCount> counts;
};

// `preferred` are the units of the workshop's tools; units that the question names go before them.
FoundAnswers say_findings(Findings findings, std::string question, const PreferredUnits& preferred);

// "No figure for the Muleback 380 of 2019."
std::string nothing_found(const FoundAnswers& found);
// The one short question that would leave a single answer of several: "Name the machine and the year." Empty
// where there is none, as when it is the libraries alone that differ. There must be answers.
std::string which_one(const FoundAnswers& found);
// "recorded for other years, not for this one:"
std::string near_heading(Near why);

}  // namespace sheaf
