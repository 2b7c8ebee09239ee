// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

void examine(const LinkedSheet& sheet, const Shelf&, Report& report) {
  for (const LinkedEntry& entry : sheet.entries) {
    if (!entry.critical || !entry.checked || entry.checked->has("second")) continue;
    const Span where = entry.has("checked") ? entry.place("checked") : sheet.place("checked");
    report(
        entry, where,
        "figures on brakes, steering and wheels want a second reader; name one in checked: { second: ... }");
    if (!entry.has("checked")) return;  // the sheet's own check is one fault
  }
}

}  // namespace

const Rule second_reader_missing = {
    {.name = "second-reader-missing",
     .severity = Severity::note,
     .summary = "figures on brakes, steering or wheels that one person alone has read",
     .why =
         "A reader sees what he expects. Where a wrong figure can let go of a brake, the steering or a wheel, a second "
         "person reads it against the source again and signs in `checked: { second: ... }`.",
     .wrong = R"(assembly: rear-wheel
fasteners:
  axle-nut: { name: rear axle nut, thread: M16x1.5, joint: axle, torque: 90 N·m, state: greased, cautions: [wheel-work] }
)",
     .right = R"(assembly: rear-wheel
checked: { on: 2026-10-02, by: workshop, second: N. }
fasteners:
  axle-nut: { name: rear axle nut, thread: M16x1.5, joint: axle, torque: 90 N·m, state: greased, cautions: [wheel-work] }
)"},
    {.sheet = examine}};

}  // namespace sheafc
