// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

// What clings to a fork leg or an engine is a tenth to a third of its filling (common practice, no source).
constexpr double most = 1.7;

void examine(const LinkedEntry& fluid, const Shelf&, Report& report) {
  const sheaf::Statement* dry = fluid.figure("dry-fill");
  for (const std::string_view key : {"volume", "after-drain"}) {
    const sheaf::Statement* refill = fluid.figure(key);
    const auto dry_ml = middle_in(dry, "mL"), refill_ml = middle_in(refill, "mL");
    if (!dry_ml || !refill_ml || dry->per != refill->per || *refill_ml <= 0) continue;
    const double ratio = *dry_ml / *refill_ml;
    if (ratio <= most && (ratio >= 1 || key == std::string_view("after-drain"))) continue;
    if (ratio < 1 && ratio >= 1 / most && key == std::string_view("volume"))
      continue;  // a dry leg's volume may be the dry fill
    report(fluid, fluid.place("dry-fill"),
           "dry filling " + fluid.values("dry-fill").front().text + " against " + std::string(key) + " " +
               fluid.values(key).front().text + "; is one of the two for both legs?",
           {other_place(fluid.place(key), std::string(key) + " stands here")});
    return;
  }
}

}  // namespace

const Rule dry_fill_over_double = {
    {.name = "dry-fill-over-double",
     .severity = Severity::warning,
     .summary = "a dry filling out of proportion to the refill",
     .why =
         "A tenth to a third of a filling clings to the parts when it is drained. A dry filling of nearly twice the "
         "refill is mostly the pair's beside the leg's. The limit is common practice, no source.",
     .wrong = R"(fluids:
  fork-oil: { name: fork oil, purpose: fork-oil, volume: 512 mL per leg, dry-fill: 1040 mL per leg, label-only: yes }
)",
     .right = R"(fluids:
  fork-oil: { name: fork oil, purpose: fork-oil, volume: 512 mL per leg, dry-fill: 540 mL per leg, label-only: yes }
)"},
    {.kind = "fluid", .entry = examine}};

}  // namespace sheafc
