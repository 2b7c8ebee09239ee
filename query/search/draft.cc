// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/draft.h"

#include "query/library/fold.h"
#include "query/library/vocabulary.h"
#include "query/search/sides.h"

namespace sheaf {
namespace {

template <typename Is>
bool says(const Question& question, Is is) {
  return std::ranges::any_of(question.tokens,
                             [&](const Token& token) { return std::ranges::any_of(token.words, is); });
}

}  // namespace

bool Draft::says_any(SomeWords words) const {
  return says(question, [&](const std::string& word) {
    return std::find(words.begin(), words.end(), word) != words.end();
  });
}

bool Draft::says_any_stem(std::initializer_list<std::string_view> stems) const {
  return says(question, [&](const std::string& word) {
    return std::find(stems.begin(), stems.end(), stem_of(word)) != stems.end();
  });
}

bool is_number(const Token& token) {
  return token.has_digit && token.typed.find_first_not_of("0123456789.,") == std::string::npos;
}

bool is_model(Draft& draft, std::size_t i) {
  constexpr std::size_t shortest = 3;
  const Token& token = draft.token(i);
  return is_number(token) && token.words.size() == 1 && token.words.front().size() >= shortest &&
         !draft.lexicon.machines_with(token.words.front()).empty();
}

bool is_part_group(std::string_view group) {
  return side_of_group(group).empty() && !group.starts_with("kind-") && !group.starts_with("hand-");
}

void add_new(std::vector<std::string>& list, std::string value) {
  if (std::ranges::find(list, value) == list.end()) list.push_back(std::move(value));
}

// A unit among the words of "kind-torque" says in what the answer is wanted.
void add_unit(QuestionReading& reading, const std::string& typed) {
  const auto units = readings(typed);
  for (const Unit* unit : units)
    if (std::ranges::find(reading.units, unit) == reading.units.end()) reading.units.push_back(unit);
}

PartAsked part_of(Draft& draft, const std::string& typed) {
  PartAsked part{typed, words_of(typed), {}};
  for (const auto& word : part.words) {
    part.groups_of_words.emplace_back();
    for (const auto& match : draft.lexicon.groups_in({word}))
      if (is_part_group(match.group)) part.groups_of_words.back().push_back(match.group);
  }
  return part;
}

bool is_known(Draft& draft, const std::string& word) {
  return is_noise(word) || !readings(word).empty() || draft.lexicon.knows(word);
}

}  // namespace sheaf
