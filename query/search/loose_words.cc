// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/loose_words.h"

#include <algorithm>
#include <iterator>

namespace sheaf {

LooseWords loose_words(const Draft& draft) {
  LooseWords words;
  for (std::size_t i = 0; i < draft.size(); ++i) {
    if (draft.taken[i]) continue;
    for (const auto& word : draft.token(i).words) words.push_back({word, i, false});
  }
  return words;
}

std::vector<std::string> texts_of(const LooseWords& words) {
  std::vector<std::string> texts;
  for (const auto& each : words) texts.push_back(each.word);
  return texts;
}

bool is_free(const LooseWords& words, const GroupMatch& match) {
  for (std::size_t i = match.first; i < match.first + match.count; ++i)
    if (words[i].taken) return false;
  return true;
}

void take(LooseWords& words, const GroupMatch& match) {
  for (std::size_t i = match.first; i < match.first + match.count; ++i) words[i].taken = true;
}

std::string typed_of(const LooseWords& words, const GroupMatch& match) {
  std::string typed;
  for (std::size_t i = match.first; i < match.first + match.count; ++i)
    typed += (typed.empty() ? "" : " ") + words[i].word;
  return typed;
}

LooseWords without_taken(const LooseWords& words) {
  LooseWords left;
  std::ranges::copy_if(words, std::back_inserter(left), [](const Loose& each) { return !each.taken; });
  return left;
}

}  // namespace sheaf
