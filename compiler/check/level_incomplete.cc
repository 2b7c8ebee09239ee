// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "compiler/check/measure.h"
#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

// Air gaps of fork legs, spring out and compressed (common practice, no source).
constexpr sheaf::Band levels_mm{40, 250};

bool speaks_of(const sheaf::Statement& level, std::initializer_list<std::string_view> wanted) {
  for (const std::string& condition : level.conditions) {
    const auto words = sheaf::words_of(sheaf::fold(condition));
    for (const std::string_view word : wanted) {
      if (std::ranges::find(words, word) != words.end()) return true;
    }
  }
  return false;
}

std::string missing(const sheaf::Statement& level) {
  std::string text;
  const auto add = [&](std::string_view what) { text += (text.empty() ? "" : "; ") + std::string(what); };
  if (!speaks_of(level, {"below", "above", "from", "under"}))
    add("from where it is measured (below the rim)");
  if (!speaks_of(level, {"spring", "springs"})) add("whether the spring is in or out");
  if (!speaks_of(level, {"compressed", "collapsed", "extended", "bottomed"}))
    add("whether the fork is compressed");
  return text;
}

void examine(const LinkedEntry& fluid, const Shelf&, Report& report) {
  if (fluid.choice("purpose") != "fork-oil") return;
  const sheaf::Statement* level = fluid.figure("level");
  if (!level) return;
  const auto mm = middle_in(level, "mm");
  if (mm && !levels_mm.holds(*mm)) {
    report(fluid, fluid.place("level"),
           sheaf::to_text(level->figure()) +
               " is no oil level of a fork leg (40 to 250 mm are); a slipped decimal?");
    return;
  }
  const std::string lacks = missing(*level);
  if (!lacks.empty())
    report(fluid, fluid.place("level"), "a level is worth nothing without its conditions; say " + lacks);
}

}  // namespace

const Rule level_incomplete = {
    {.name = "level-incomplete",
     .severity = Severity::error,
     .summary = "a fork's oil level without its conditions, or one that cannot be",
     .why =
         "The same oil stands tens of millimetres higher with the spring in, or with the leg extended. Unless the sheet "
         "says from where, with the spring in or out, and compressed or not, the number means another amount of oil. "
         "Levels of fork legs are 40 to 250 mm (common practice, no source).",
     .wrong = R"(fluids:
  fork-oil: { name: fork oil, purpose: fork-oil, level: 118 mm below the rim, label-only: yes }
)",
     .right = R"(fluids:
  fork-oil: { name: fork oil, purpose: fork-oil, level: "118 mm below the rim, spring out, fork compressed", label-only: yes }
)"},
    {.kind = "fluid", .entry = examine}};

}  // namespace sheafc
