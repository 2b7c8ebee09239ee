// SPDX-License-Identifier: GPL-2.0-or-later
// Few keys are compared each with each; many are sorted, for a hostile sheet may hold a hundred thousand.
#include "compiler/source/duplicate_keys.h"

#include <algorithm>
#include <string>
#include <vector>

namespace sheafc {
namespace {

constexpr std::size_t few = 12;
constexpr int most_reported = 100;  // of one sheet

}  // namespace

void DuplicateKeys::check(std::span<const Pair> pairs) {
  if (pairs.size() <= few) {
    for (std::size_t i = 1; i < pairs.size(); ++i) {
      const auto before = pairs.first(i);
      const auto first =
          std::find_if(before.begin(), before.end(), [&](const Pair& p) { return p.key == pairs[i].key; });
      if (first != before.end()) report(*first, pairs[i]);
    }
    return;
  }
  std::vector<const Pair*> sorted;
  for (const Pair& pair : pairs) sorted.push_back(&pair);
  std::sort(sorted.begin(), sorted.end(),
            [](const Pair* a, const Pair* b) { return a->key != b->key ? a->key < b->key : a < b; });
  const Pair* first = sorted.front();
  for (const Pair* pair : sorted) {
    if (pair->key != first->key) first = pair;
    if (pair != first) report(*first, *pair);
  }
}

void DuplicateKeys::report(const Pair& first, const Pair& again) {
  if (++reported_ > most_reported) return;
  if (reported_ == most_reported) {
    return sink_.error("duplicate-key", again.key_span, "so many keys stand twice that no more are listed");
  }
  sink_.report({Severity::error,
                "duplicate-key",
                again.key_span,
                "the key `" + std::string(again.key) + "` stands here a second time; keep one of the two",
                {{Severity::note, "duplicate-key", first.key_span, "the first is here", {}}}});
}

}  // namespace sheafc
