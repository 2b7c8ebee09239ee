// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr double widest_share = 0.30;

// Beyond a band of 2 to 1 (a third either side) band-too-wide speaks.
constexpr double left_to_band_too_wide = 1.0 / 3;

void examine(const LinkedEntry& entry, const Shelf&, Report& report) {
  const sheaf::Statement* torque = entry.figure("torque");
  if (!torque) return;
  for (const sheaf::Stage& stage : torque->stages) {
    const sheaf::Figure& figure = stage.figure;
    if (figure.form != sheaf::Form::plus_minus || !figure.spread || !figure.nominal) continue;
    const double share = sheaf::approximate(*figure.spread) / sheaf::approximate(*figure.nominal);
    if (share <= widest_share || share > left_to_band_too_wide) continue;
    report(entry, entry.place("torque"),
           "± " + sheaf::to_text(*figure.spread) + " is " + about(share * 100, "%") + " of " +
               sheaf::to_text(*figure.nominal) + "; is the tolerance in per cent?");
  }
}

}  // namespace

const Rule tolerance_over_a_third = {
    {.name = "tolerance-over-a-third",
     .severity = Severity::warning,
     .summary = "a tolerance that may have been meant in per cent",
     .why =
         "A paper that prints `33 ± 10` in a column headed per cent is easily copied as an absolute tolerance. Over "
         "30 % of the nominal is rare enough to look twice. The limit is common practice, no source.",
     .wrong = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M10x1.5, torque: 32 ± 10 N·m, state: dry }
)",
     .right = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M10x1.5, torque: 32 N·m ± 10 %, state: dry }
)"},
    {.entry = examine}};

}  // namespace sheafc
