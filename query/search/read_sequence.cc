// SPDX-License-Identifier: GPL-2.0-or-later
// "pivot adjuster before the nut": what comes later in the job is not what is asked for.
#include "query/search/draft.h"

namespace sheaf {
namespace {

constexpr std::size_t longest_later = 2;  // words that name what comes later; more are a question of their own

bool names_something(const Draft& draft, std::size_t i) {
  return !draft.taken[i] && !std::ranges::all_of(draft.token(i).words, is_noise);
}

std::vector<std::size_t> naming(const Draft& draft, std::size_t first, std::size_t end) {
  std::vector<std::size_t> tokens;
  for (std::size_t i = first; i < end; ++i)
    if (names_something(draft, i)) tokens.push_back(i);
  return tokens;
}

}  // namespace

void read_sequence(Draft& draft) {
  for (std::size_t i = 1; i < draft.size(); ++i) {
    if (!draft.has_word(i, "before") || naming(draft, 0, i).empty()) continue;
    const auto later = naming(draft, i + 1, draft.size());
    const bool has_digits = std::ranges::any_of(later, [&](std::size_t at) { return draft.token(at).has_digit; });
    if (later.empty() || later.size() > longest_later || has_digits) continue;
    for (const std::size_t at : later) {
      draft.reading.left_out.push_back(draft.token(at).typed);
      draft.take(at, 1);
    }
  }
}

}  // namespace sheaf
