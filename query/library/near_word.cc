// SPDX-License-Identifier: GPL-2.0-or-later
// Optimal string alignment distance, three rows at a time.
#include "query/library/near_word.h"

#include <algorithm>
#include <array>

namespace sheaf {
namespace {

constexpr std::size_t longest = 60;  // bytes; a longer word is near to nothing

}  // namespace

int slips_between(std::string_view left, std::string_view right) {
  if (left.size() > longest || right.size() > longest) return static_cast<int>(longest);
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
  return rows[left.size() % 3][right.size()];
}

std::string_view near_word(std::string_view word, std::span<const std::string_view> candidates) {
  int best_slips = word.size() <= 4 ? 2 : 3;  // one more than is allowed
  std::string_view best;
  for (const std::string_view candidate : candidates) {
    const int slips = slips_between(word, candidate);
    if (slips >= best_slips) continue;
    best_slips = slips;
    best = candidate;
  }
  return best;
}

}  // namespace sheaf
