// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <map>

#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

int turns_of(const sheaf::Statement& torque) {
  int count = 0;
  for (const sheaf::Stage& stage : torque.stages) count += stage.act == sheaf::Act::turn_further;
  return count;
}

void gather(const LinkedEntry& entry, Facts& facts) {
  const sheaf::Statement* torque = entry.figure("torque");
  const int turns = torque ? turns_of(*torque) : 0;
  if (turns == 0) return;
  const std::string degrees = sheaf::brief(turned_further_degrees(*torque));
  facts.add(entry, likeness(likeness(role_likeness(entry.name), entry.sheet->assembly()), degrees),
            std::uint64_t(turns));
}

void judge(FactGroup group, Look& look, Report& report) {
  const Fact& most = *std::ranges::max_element(group, {}, &Fact::says);
  for (const Fact& fact : group) {
    if (fact.says == most.says) continue;
    const LinkedEntry& fastener = look.entry(fact);
    const LinkedEntry& sister = look.entry(most);
    report(fastener, fastener.place("torque"),
           "turns the whole angle at once where '" + sister.address + "' turns it in " +
               std::to_string(most.says) + " steps",
           {other_place(sister.place("torque"), "the steps stand here")});
  }
}

}  // namespace

const Rule angle_unlike_sisters = {
    {.name = "angle-unlike-sisters",
     .severity = Severity::note,
     .summary = "an angle in one step where the same joint elsewhere takes it in several",
     .why =
         "60° + 30° over a pattern clamps a head evenly; 90° at once does not, though the sum is the same. The two are "
         "often merged when a table is copied.",
     .wrong = R"(fasteners:
  head-bolt: { name: head bolt, side: left, thread: M9x1.25, torque: 25 N·m + 90°, reuse: no, state: oiled }
  head-bolt-right: { name: head bolt, side: right, thread: M9x1.25, torque: 25 N·m + 90°, reuse: no, state: oiled }
  head-bolt-rear: { name: head bolt, side: rear, thread: M9x1.25, torque: 25 N·m + 60° + 30°, reuse: no, state: oiled }
)",
     .right = R"(fasteners:
  head-bolt: { name: head bolt, side: left, thread: M9x1.25, torque: 25 N·m + 60° + 30°, reuse: no, state: oiled }
  head-bolt-right: { name: head bolt, side: right, thread: M9x1.25, torque: 25 N·m + 60° + 30°, reuse: no, state: oiled }
)"},
    {.kind = "fastener", .gather = gather, .judge = judge}};

}  // namespace sheafc
