// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/short_form.h"

#include <algorithm>

namespace sheaf {
namespace {

constexpr std::size_t shortest_joined = 6, shortest_half = 2;  // letters

bool begins_or_shortens(std::string_view half, std::string_view word) {
  const std::string_view one =
      half.size() > shortest_half && half.ends_with('s') ? half.substr(0, half.size() - 1) : half;
  return word.starts_with(half) || word == one || shortens(half, word);
}

}  // namespace

std::string consonants_of(std::string_view word) {
  std::string consonants(word);
  std::erase_if(consonants,
                [](char letter) { return std::string_view("aeiou").find(letter) != std::string_view::npos; });
  return consonants;
}

bool shortens(std::string_view brief, std::string_view whole) {
  if (brief.size() < 2 || whole.size() <= brief.size() || brief.front() != whole.front()) return false;
  std::size_t found = 0;
  for (const char letter : whole)
    if (found < brief.size() && letter == brief[found]) ++found;
  return found == brief.size();
}

std::vector<std::size_t> short_for(std::string_view word, const std::vector<std::string>& name) {
  for (std::size_t i = 0; i < name.size(); ++i)
    if (shortens(word, name[i])) return {i};
  if (word.size() < shortest_joined) return {};
  for (std::size_t half = shortest_half; half + shortest_half < word.size(); ++half)
    for (std::size_t i = 0; i < name.size(); ++i)
      for (std::size_t j = 0; j < name.size() && begins_or_shortens(word.substr(0, half), name[i]); ++j)
        if (i != j && begins_or_shortens(word.substr(half), name[j])) return {i, j};
  return {};
}

}  // namespace sheaf
