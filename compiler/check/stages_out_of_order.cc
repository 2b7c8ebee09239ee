// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

bool loosens(const sheaf::Stage& stage) {
  return stage.act == sheaf::Act::loosen || stage.act == sheaf::Act::loosen_fully;
}

void examine(const LinkedEntry& fastener, const Shelf&, Report& report) {
  const sheaf::Statement* torque = fastener.figure("torque");
  if (!torque) return;
  const sheaf::Figure* before = nullptr;
  for (const sheaf::Stage& stage : torque->stages) {
    if (loosens(stage)) before = nullptr;
    if (stage.act != sheaf::Act::tighten || stage.hand_tight) continue;
    if (before && middle_in(stage.figure, "N·m").value_or(0) <= middle_in(*before, "N·m").value_or(0)) {
      report(fastener, fastener.place("torque"),
             "stage " + sheaf::to_text(stage.figure) + " follows " + sheaf::to_text(*before) +
                 " and would move nothing; write the stages in order, or the loosening between them");
      return;
    }
    before = &stage.figure;
  }
}

}  // namespace

const Rule stages_out_of_order = {
    {.name = "stages-out-of-order",
     .severity = Severity::warning,
     .summary = "a stage that is no tighter than the one before it",
     .why =
         "Once a fastener is at 40 N·m, a wrench set to 20 N·m clicks at once. Stages grow, unless the fastener is "
         "loosened between them, which the sheet then says: `40 N·m, loosen 180°, 25 N·m`.",
     .wrong = R"(fasteners:
  head-bolt: { name: head bolt, thread: M10x1.25, torque: "40 N·m, 20 N·m, 50 N·m", state: oiled }
)",
     .right = R"(fasteners:
  head-bolt: { name: head bolt, thread: M10x1.25, torque: "20 N·m, 40 N·m, 50 N·m", state: oiled }
)"},
    {.kind = "fastener", .entry = examine}};

}  // namespace sheafc
