// SPDX-License-Identifier: GPL-2.0-or-later
// The index's own list of words is walked from the letters typed; how far is bounded, so that one letter
// costs no more than three.
#include "query/search/complete.h"

#include <algorithm>

#include "query/library/fold.h"
#include "query/search/digits.h"

namespace sheaf {
namespace {

constexpr std::size_t shortest_answered = 3;  // letters

std::string_view last_word(std::string_view text) {
  const auto space = text.rfind(' ');
  return space == std::string_view::npos ? text : text.substr(space + 1);
}

void add_machines(std::vector<Offer>& offers, const std::string& beginning, Lexicon& lexicon) {
  for (const auto& machine : lexicon.machines_beginning(beginning)) {
    for (const auto& word : words_of(fold(machine.make + " " + machine.model))) {
      const bool is_known = std::ranges::find(offers, word, &Offer::word) != offers.end();
      if (word.starts_with(beginning) && !is_known) offers.push_back({word, 0});
    }
  }
}

}  // namespace

std::vector<Offer> complete(std::string_view text, Lexicon& lexicon, std::size_t limit) {
  const auto words = words_of(fold(last_word(text)));
  if (words.empty()) return {};
  const std::string& beginning = words.back();
  std::vector<Offer> offers;
  for (auto& [word, entries] : lexicon.words_beginning(beginning))
    offers.push_back({std::move(word), entries});
  std::ranges::stable_sort(offers, std::ranges::greater(), &Offer::entries);
  if (offers.size() > limit) offers.resize(limit);
  add_machines(offers, beginning, lexicon);
  if (offers.size() > limit) offers.resize(limit);
  return offers;
}

std::string completed(std::string_view text, Lexicon& lexicon) {
  const auto word = last_word(text);
  const auto words = words_of(fold(word));
  const bool is_open =
      words.size() == 1 && words.front().size() >= shortest_answered && !has_digit(words.front());
  if (!is_open || lexicon.knows(words.front())) return std::string(text);
  const auto offers = complete(text, lexicon, 1);
  if (offers.empty()) return std::string(text);
  return std::string(text.substr(0, text.size() - word.size())) + offers.front().word;
}

}  // namespace sheaf
