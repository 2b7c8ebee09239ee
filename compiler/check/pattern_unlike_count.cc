// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "compiler/check/rules.h"

namespace sheafc {
namespace {

bool is_permutation(std::vector<int> order) {
  std::ranges::sort(order);
  for (std::size_t i = 0; i < order.size(); ++i) {
    if (order[i] != static_cast<int>(i) + 1) return false;
  }
  return true;
}

void examine(const LinkedEntry& fastener, const Shelf&, Report& report) {
  const Pattern* pattern = fastener.pattern("pattern");
  if (!pattern) return;
  const auto places = static_cast<int>(pattern->order.size());
  if (!is_permutation(pattern->order)) {
    report(fastener, fastener.place("pattern"),
           "the pattern must name each of 1 to " + std::to_string(places) + " once");
    return;
  }
  const Count* count = fastener.count("count");
  if (!count || count->number == places) return;
  report(fastener, fastener.place("pattern"),
         "the pattern has " + std::to_string(places) + " places, but there are " + to_text(*count) +
             " fasteners",
         {other_place(fastener.place("count"), "the count stands here")});
}

}  // namespace

const Rule pattern_unlike_count = {
    {.name = "pattern-unlike-count",
     .severity = Severity::error,
     .summary = "a tightening pattern that does not name each fastener once",
     .why =
         "A pattern that leaves one out, names one twice, or has more places than there are fasteners leaves one of "
         "them loose. Both come from copying a neighbour's cover.",
     .wrong = R"(fasteners:
  cover-screws: { name: clutch cover screws, count: 4, thread: M6x1, torque: 10 N·m, state: dry, pattern: 1-3-2-5 }
)",
     .right = R"(fasteners:
  cover-screws: { name: clutch cover screws, count: 4, thread: M6x1, torque: 10 N·m, state: dry, pattern: 1-3-2-4 }
)"},
    {.entry = examine}};

}  // namespace sheafc
