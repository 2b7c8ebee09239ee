// SPDX-License-Identifier: GPL-2.0-or-later
// Optimal string alignment distance, three rows at a time.
#include "compiler/sheet/suggestion.h"

#include <algorithm>
#include <array>

namespace sheafc {

int edit_distance(std::string_view left, std::string_view right, int limit) {
  constexpr std::size_t longest = 100;
  const auto difference =
      left.size() > right.size() ? left.size() - right.size() : right.size() - left.size();
  if (left.size() > longest || right.size() > longest || static_cast<int>(difference) > limit)
    return limit + 1;

  std::array<std::array<int, longest + 1>, 3> rows{};
  for (std::size_t j = 0; j <= right.size(); ++j) rows[0][j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= left.size(); ++i) {
    const auto& above = rows[(i - 1) % 3];
    const auto& two_above = rows[(i + 1) % 3];
    auto& row = rows[i % 3];
    row[0] = static_cast<int>(i);
    for (std::size_t j = 1; j <= right.size(); ++j) {
      const int change = left[i - 1] == right[j - 1] ? 0 : 1;
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, above[j - 1] + change});
      const bool swapped = i > 1 && j > 1 && left[i - 1] == right[j - 2] && left[i - 2] == right[j - 1];
      if (swapped) row[j] = std::min(row[j], two_above[j - 2] + 1);
    }
  }
  return std::min(rows[left.size() % 3][right.size()], limit + 1);
}

std::string_view nearest(std::string_view word, std::span<const std::string_view> candidates) {
  const int limit = word.size() <= 4 ? 1 : 2;
  std::string_view best;
  int best_distance = limit + 1;
  for (const std::string_view candidate : candidates) {
    const int distance = edit_distance(word, candidate, limit);
    if (distance < best_distance) {
      best_distance = distance;
      best = candidate;
    }
  }
  return best;
}

std::string did_you_mean(std::string_view word, std::span<const std::string_view> candidates) {
  const std::string_view near = nearest(word, candidates);
  return near.empty() ? "" : "; did you mean '" + std::string(near) + "'?";
}

std::string any_of(std::span<const std::string_view> words) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) list += i + 1 == words.size() ? " or " : ", ";
    list += words[i];
  }
  return list;
}

}  // namespace sheafc
