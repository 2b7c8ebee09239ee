// SPDX-License-Identifier: GPL-2.0-or-later
// "rear wheel off the causeway, what do the front disc bolts get": the clause that asks, and what is said
// beside it.
#include "query/search/clauses.h"

#include <algorithm>

#include "query/search/part_names.h"

namespace sheaf {
namespace {

constexpr std::string_view asking[] = {"how",  "what",   "whats",  "which",   "where",   "when",
                                       "wie",  "was",    "welche", "welcher", "welches", "combien",
                                       "quel", "quelle", "cuanto", "cual",    "quanto",  "quale"};
constexpr std::string_view beginning[] = {"do", "does", "is", "are", "can", "may", "should", "must", "will"};
constexpr std::size_t first_words = 3;  // "so how", "and now what": the clause begins with what it asks

bool holds(const Draft& draft, const Clause& clause, SomeWords said, std::size_t most) {
  for (std::size_t i = clause.begin; i < std::min(clause.end, clause.begin + most); ++i)
    if (draft.has_any(i, said)) return true;
  return false;
}

bool asks_politely(const Draft& draft, const Clause& clause) {
  constexpr std::string_view please[] = {"please", "pls"};
  return holds(draft, clause, please, draft.size());
}

std::vector<Clause> clauses_of(const Draft& draft) {
  std::vector<Clause> clauses;
  std::size_t begin = 0;
  for (std::size_t i = 1; i <= draft.size(); ++i) {
    if (i < draft.size() && !begins_clause(draft, i)) continue;
    clauses.push_back({begin, i});
    begin = i;
  }
  return clauses;
}

// "how far below the peg", "how much in the rear tyre"
bool says_where(const Draft& draft, std::size_t i) {
  constexpr std::string_view places[] = {"under", "below",  "beneath", "above",   "over",   "from",
                                         "to",    "before", "after",   "in",      "into",   "on",
                                         "with",  "at",     "round",   "against", "between"};
  return draft.has_any(i, places);
}

}  // namespace

Clause asking_clause(const Draft& draft) {
  const auto clauses = clauses_of(draft);
  const auto last_that = [&](auto is_it) {
    const auto found = std::find_if(clauses.rbegin(), clauses.rend(), is_it);
    return found == clauses.rend() ? Clause{} : *found;
  };
  const auto begins_so = [&](const Clause& clause) { return holds(draft, clause, asking, first_words); };
  const auto asks_at_all = [&](const Clause& clause) { return holds(draft, clause, asking, draft.size()); };
  for (const Clause& found :
       {last_that(begins_so), last_that(asks_at_all),
        last_that([&](const Clause& clause) { return asks_politely(draft, clause); }),
        last_that([&](const Clause& clause) { return holds(draft, clause, beginning, 1); })})
    if (found.end > found.begin) return found;
  return {};
}

void read_contexts(Draft& draft) {
  const Clause clause = asking_clause(draft);
  std::size_t named_until = clause.begin;
  while (named_until < clause.end && !says_where(draft, named_until)) ++named_until;
  auto& parts = draft.reading.parts;
  const auto is_asked = [&](const PartAsked& part) {
    return part.token >= clause.begin && part.token < named_until;
  };
  if (std::ranges::none_of(parts,
                           [&](const PartAsked& part) { return is_asked(part) && names_a_part(part); }))
    return;
  for (auto& part : parts) part.is_context = part.token < clause.begin || part.token >= clause.end;
}

}  // namespace sheaf
