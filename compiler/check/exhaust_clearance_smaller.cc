// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/measure.h"
#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

bool has_side(const LinkedEntry& entry, std::string_view side) {
  for (const Value& value : entry.values("side")) {
    if (value.text == side) return true;
  }
  return sheaf::fold(entry.name).find(side) != std::string::npos;
}

void examine(const LinkedSheet& sheet, const Shelf&, Report& report) {
  for (const LinkedEntry& intake : sheet.entries) {
    const auto in = intake.kind == "clearance" && has_side(intake, "intake")
                        ? middle_in(intake.figure("value"), "mm")
                        : std::nullopt;
    if (!in) continue;
    for (const LinkedEntry& exhaust : sheet.entries) {
      const auto out =
          exhaust.kind == "clearance" && has_side(exhaust, "exhaust") && !has_side(exhaust, "intake")
              ? middle_in(exhaust.figure("value"), "mm")
              : std::nullopt;
      if (!out || *out >= *in) continue;
      report(exhaust, exhaust.place("value"),
             "the exhaust has less clearance than the intake (" + intake.values("value").front().text +
                 "); are the two swapped?",
             {other_place(intake.place("value"), "the intake's stands here")});
    }
  }
}

}  // namespace

const Rule exhaust_clearance_smaller = {
    {.name = "exhaust-clearance-smaller",
     .severity = Severity::note,
     .summary = "an exhaust valve with less clearance than the intake",
     .why =
         "Exhaust valves run hotter and mostly need more clearance. Some engines are the other way round, so this is a "
         "note.",
     .wrong = R"(clearances:
  intake-valve: { name: intake valve clearance, value: "0.25 mm, cold" }
  exhaust-valve: { name: exhaust valve clearance, value: "0.15 mm, cold" }
)",
     .right = R"(clearances:
  intake-valve: { name: intake valve clearance, value: "0.15 mm, cold" }
  exhaust-valve: { name: exhaust valve clearance, value: "0.25 mm, cold" }
)"},
    {.sheet = examine}};

}  // namespace sheafc
