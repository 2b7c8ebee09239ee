// SPDX-License-Identifier: GPL-2.0-or-later
// "cush rubbers | causeway hub", "clutch springs | how short": words that stand together belong together, and
// what a comma, a machine or a word such as "in" parts from them may be said of something else.
#include <algorithm>

#include "query/search/draft.h"

namespace sheaf {
namespace {

bool is_part_of_name(const Draft& draft, std::size_t i) {
  const auto& reading = draft.reading;
  return std::ranges::any_of(draft.token(i).words, [&](const std::string& word) {
    const auto holds_it = [&](const PartAsked& part) {
      return std::ranges::find(part.words, word) != part.words.end();
    };
    return is_ordinary(word) || std::ranges::any_of(reading.parts, holds_it) ||
           std::ranges::find(reading.unread, word) != reading.unread.end();
  });
}

bool parts_names(const Draft& draft, std::size_t i) {
  const Token& token = draft.token(i);
  return token.has_digit || std::ranges::all_of(token.words, is_noise) || !is_part_of_name(draft, i);
}

// "of the fuel tank", "for heated grips", "for the causeway's camshafts"
bool follows_belonging(const Draft& draft, std::size_t i) {
  constexpr std::string_view articles[] = {"the", "a",   "an", "my", "our", "das",
                                           "die", "der", "le", "la", "el",  "il"};
  constexpr std::string_view belonging[] = {"of", "for", "von", "vom", "fur",  "de",
                                            "du", "del", "di",  "per", "para", "pour"};
  const auto names_machine = [&](std::size_t at) {
    return !std::ranges::all_of(draft.token(at).words, is_noise) && !is_part_of_name(draft, at);
  };
  while (i > 0 && !draft.has_any(i - 1, belonging) &&
         (draft.has_any(i - 1, articles) || names_machine(i - 1)))
    --i;
  return i > 0 && draft.has_any(i - 1, belonging);
}

}  // namespace

bool begins_clause(const Draft& draft, std::size_t i) {
  const std::size_t end = draft.token(i - 1).end;
  if (draft.token(i).begin < end) return false;  // pieces of one word
  const auto between = std::string_view(draft.question.text).substr(end, draft.token(i).begin - end);
  return between.find_first_of(",;:?!.") != std::string_view::npos ||
         between.find(" - ") != std::string_view::npos;
}

void read_phrases(Draft& draft) {
  std::vector<std::size_t> phrases(draft.size(), 0);
  for (std::size_t i = 1; i < draft.size(); ++i)
    phrases[i] = phrases[i - 1] +
                 (begins_clause(draft, i) || parts_names(draft, i) || parts_names(draft, i - 1) ? 1 : 0);
  for (auto& part : draft.reading.parts) {
    if (part.token >= phrases.size()) continue;  // that goes without saying
    part.phrase = phrases[part.token];
    std::size_t first = part.token;
    while (first > 0 && phrases[first - 1] == part.phrase) --first;
    part.says_whose = follows_belonging(draft, first);
  }
}

}  // namespace sheaf
