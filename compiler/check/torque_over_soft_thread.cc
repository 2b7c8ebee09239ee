// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/joint.h"
#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

// The share of a class 8.8 screw's proof load at which threads in each material are commonly at their
// limit (common practice, no source).
double most_in(std::string_view material) {
  if (material == "aluminium") return 0.20;
  if (material == "magnesium") return 0.13;
  if (material == "brass") return 0.13;
  if (material == "plastic") return 0.06;
  return 0;
}

void examine(const LinkedEntry& fastener, const Shelf& shelf, Report& report) {
  const double most = most_in(fastener.choice("into"));
  if (most == 0 || fastener.choice("joint") == "spoke") return;  // a nipple's torque is mostly friction
  const auto geometry = shelf.geometry_of(fastener);
  const auto torque = torque_of_one_nm(fastener);
  const auto row = geometry ? sheaf::class_for("8.8", geometry->diameter, shelf.classes())
                            : sheaf::Result<sheaf::PropertyClass>(sheaf::Failure{});
  if (!torque || !row || !row->proof || !shelf.nut_factor()) return;
  const double bears = *row->proof * geometry->stress_area * geometry->diameter / 1000;
  const double ratio = *torque / bears;
  // What no screw bears is another rule's matter.
  if (ratio <= most || ratio > shelf.nut_factor()->most) return;
  report(fastener, fastener.place("torque"),
         "threads in " + std::string(fastener.choice("into")) + " commonly bear no more than " +
             about(most * bears, "N·m") + " at " + sheaf::to_text(*fastener.thread("thread")) +
             "; is there an insert?");
}

}  // namespace

const Rule torque_over_soft_thread = {
    {.name = "torque-over-soft-thread",
     .severity = Severity::warning,
     .summary = "a torque that light metal or plastic threads commonly do not bear",
     .why =
         "A class 8.8 torque strips a thread cut in aluminium, magnesium, brass or plastic before the screw gives. "
         "Either the figure is meant for another joint, or the hole has an insert (`into: insert`). The limits are "
         "common practice, no source.",
     .wrong = R"(fasteners:
  cover-screw: { name: chain guard screw, thread: M6x1, class: "10.9", into: magnesium, torque: 14 N·m, state: dry }
)",
     .right = R"(fasteners:
  cover-screw: { name: chain guard screw, thread: M6x1, class: "10.9", into: magnesium, torque: 8 N·m, state: dry }
)"},
    {.kind = "fastener", .entry = examine}};

}  // namespace sheafc
