// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/joint.h"
#include "compiler/check/measure.h"
#include "compiler/check/rules.h"
#include "compiler/check/slip.h"

namespace sheafc {
namespace {

// A third of the least that ordinary joints have; a decimal slipped downward lands at 0.009 to 0.017.
constexpr double too_little = 0.03;
constexpr sheaf::Band usual{0.06, 0.20};

bool turns_further(const sheaf::Statement& torque) { return turned_further_degrees(torque) > 0; }

void examine(const LinkedEntry& fastener, const Shelf& shelf, Report& report) {
  const sheaf::Statement* torque = fastener.figure("torque");
  if (!torque || turns_further(*torque)) return;
  const auto joint = joint_of(fastener, shelf, "4.8");
  const auto value = torque_of_one_nm(fastener);
  if (!joint || !joint->ordinary || !value || *value <= 0 || joint->ratio(*value) >= too_little) return;
  const sheaf::Figure& figure = torque->stages.back().figure;
  if (!figure.unit) return;
  const sheaf::Band fits{usual.least * joint->bears_nm, usual.most * joint->bears_nm};
  report(fastener, fastener.place("torque"),
         sheaf::to_text(figure) + " hardly clamps an " + screw_of(fastener) + " fastener (" +
             about(fits.least, "") + " to " + about(fits.most, "N·m") + " is usual)" +
             suspected_torque_slip(*value, figure, fits));
}

}  // namespace

const Rule torque_far_below = {
    {.name = "torque-far-below",
     .severity = Severity::warning,
     .summary = "a torque that hardly clamps an ordinary joint",
     .why =
         "An ordinary joint is held by its screw's tension. Below a third of the usual share of the proof load it "
         "is not tightened but only screwed in, so the figure is more likely a slipped decimal, or kgf·m read as "
         "N·m. Axles, caps, plugs, hollow bolts, stems, pivots, spokes and screws into plastic are left alone: say "
         "which by `joint` or `into`. The limit is common practice, no source.",
     .wrong = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, class: "8.8", torque: 2.2 N·m, state: dry }
)",
     .right = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, class: "8.8", torque: 22 N·m, state: dry }
)"},
    {.kind = "fastener", .entry = examine}};

}  // namespace sheafc
