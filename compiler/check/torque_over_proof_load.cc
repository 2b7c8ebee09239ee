// SPDX-License-Identifier: GPL-2.0-or-later
// The one rule that stops a slipped decimal before it shears a screw.
#include <algorithm>

#include "compiler/check/joint.h"
#include "compiler/check/measure.h"
#include "compiler/check/rules.h"
#include "compiler/check/slip.h"

namespace sheafc {
namespace {

// Where the usual joints stand: see joint.h.
constexpr sheaf::Band usual{0.05, 0.18};
// Beyond this the screw passes its proof load even with the nut factor of plain steel, 0.20
// (Shigley Table 8-15 gives 0.20 for zinc-plated, 0.30 for dry black finish).
constexpr double unlikely = 0.20;

std::string bearable(const Joint& joint) {
  const double most = usual.most * joint.bears_nm;
  return "about " + about(usual.least * joint.bears_nm, "") + " to " + about(most, "N·m");
}

std::string message(const LinkedEntry& fastener, double torque, const Joint& joint, std::string_view verb) {
  const sheaf::Statement& statement = *fastener.figure("torque");
  const auto stage = std::ranges::max_element(statement.stages, {}, [](const sheaf::Stage& s) {
    return s.act == sheaf::Act::tighten && !s.hand_tight ? middle_in(s.figure, "N·m").value_or(0) : 0;
  });
  const sheaf::Band fits{usual.least * joint.bears_nm, usual.most * joint.bears_nm};
  return sheaf::to_text(stage->figure) + " is more than an " + screw_of(fastener) + " fastener " +
         std::string(verb) + " (" + bearable(joint) + " is usual)" +
         suspected_torque_slip(torque, stage->figure, fits);
}

void examine(const LinkedEntry& fastener, const Shelf& shelf, Report& report) {
  if (!shelf.nut_factor()) return;
  const auto torque = torque_of_one_nm(fastener);
  if (!torque) return;
  const auto likely = joint_of(fastener, shelf, "8.8");
  if (!likely || likely->ratio(*torque) <= std::min(unlikely, shelf.nut_factor()->most)) return;
  // Without a class nobody knows better than that it is no more than the strongest.
  const auto strongest = joint_of(fastener, shelf, "12.9");
  if (!strongest) return;
  const Span where = fastener.place("torque");
  if (strongest->ratio(*torque) > shelf.nut_factor()->most) {
    report(fastener, where, message(fastener, *torque, *likely, "can bear"));
  } else if (likely->ratio(*torque) > (likely->class_stated ? unlikely : shelf.nut_factor()->most)) {
    report.as(Severity::warning, fastener, where, message(fastener, *torque, *likely, "commonly bears"));
  }
}

}  // namespace

const Rule torque_over_proof_load = {
    {.name = "torque-over-proof-load",
     .severity = Severity::error,
     .summary = "a torque that would pull the screw beyond its proof load",
     .why =
         "The preload that a torque gives is T/(K·d). Textbooks differ on the nut factor K: plain and zinc-plated "
         "steel is 0.20 in one and about 0.30 in another, dry black finish 0.30 in one and 0.20 in another. The rule "
         "takes the widest published range on the shelf (nut-factors): only a torque that passes the proof load with "
         "the greatest K is an error; one that passes it with K 0.20 is a warning. Where no class is stated the "
         "error is judged by class 12.9. Hollow bolts are given 0.6 of the section. Proof stress: ISO 898-1, SAE "
         "J429; formula: Shigley, Mechanical Engineering Design, Eq. 8-27.",
     .wrong = R"(fasteners:
  guard-screw: { name: chain guard screw, thread: M6x1, class: "8.8", torque: 105 N·m, state: dry }
)",
     .right = R"(fasteners:
  guard-screw: { name: chain guard screw, thread: M6x1, class: "8.8", torque: 10.5 N·m, state: dry }
)"},
    {.kind = "fastener", .entry = examine}};

}  // namespace sheafc
