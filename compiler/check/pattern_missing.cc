// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

// What warps or leaks when it is tightened from one side (common practice, no source).
constexpr std::string_view clamped_flat[] = {"head", "cover", "sprocket", "disc", "rotor", "yoke"};

bool clamps_flat(const LinkedEntry& fastener) {
  const auto words = sheaf::words_of(sheaf::fold(fastener.name));
  return std::ranges::any_of(
      clamped_flat, [&](std::string_view word) { return std::ranges::find(words, word) != words.end(); });
}

void examine(const LinkedEntry& fastener, const Shelf&, Report& report) {
  if (!fastener.has("torque") || fastener.has("pattern")) return;
  const Count* count = fastener.count("count");
  if (!count || count->number < 4 || !clamps_flat(fastener)) return;
  report(fastener, fastener.place("count"),
         std::to_string(count->number) +
             " fasteners clamp one face and no pattern is given; write pattern: 1-3-2-4, or the "
             "order that the source gives");
}

}  // namespace

const Rule pattern_missing = {
    {.name = "pattern-missing",
     .severity = Severity::note,
     .summary = "four or more fasteners on a head, cover, disc or sprocket without a pattern",
     .why =
         "A head, a cover or a disc that is tightened from one side warps or leaks. Where the source gives an order, "
         "the sheet should; where it does not, the usual crosswise order is left to the reader, so this is a note.",
     .wrong = R"(fasteners:
  cover-screws: { name: clutch cover screws, count: 6, thread: M6x1, torque: 10 N·m, state: dry }
)",
     .right = R"(fasteners:
  cover-screws: { name: clutch cover screws, count: 6, thread: M6x1, torque: 10 N·m, state: dry, pattern: 1-4-2-5-3-6 }
)"},
    {.kind = "fastener", .entry = examine}};

}  // namespace sheafc
