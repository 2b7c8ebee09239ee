// SPDX-License-Identifier: GPL-2.0-or-later
#include <map>

#include "compiler/check/measure.h"
#include "compiler/check/peers.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

int turns_of(const sheaf::Statement& torque) {
  int count = 0;
  for (const sheaf::Stage& stage : torque.stages) count += stage.act == sheaf::Act::turn_further;
  return count;
}

void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  std::map<std::string, std::vector<const LinkedEntry*>> by_role;
  for (const LinkedEntry* fastener : sheets.entries_of("fastener")) {
    const sheaf::Statement* torque = fastener->figure("torque");
    if (torque && turns_of(*torque) > 0) by_role[role_of(fastener->name) + "|" + std::string(fastener->sheet->assembly())].push_back(fastener);
  }
  for (const auto& [role, fasteners] : by_role) {
    for (const LinkedEntry* fastener : fasteners) {
      for (const LinkedEntry* sister : fasteners) {
        const int own = turns_of(*fastener->figure("torque")), its = turns_of(*sister->figure("torque"));
        if (own >= its || turned_further_degrees(*fastener->figure("torque")) != turned_further_degrees(*sister->figure("torque"))) continue;
        report(*fastener, fastener->place("torque"),
               "turns the whole angle at once where '" + sister->address + "' turns it in " + std::to_string(its) + " steps",
               {other_place(sister->place("torque"), "the steps stand here")});
        break;
      }
    }
  }
}

}  // namespace

const Rule angle_unlike_sisters = {
    {.name = "angle-unlike-sisters",
     .severity = Severity::note,
     .summary = "an angle in one step where the same joint elsewhere takes it in several",
     .why = "60° + 30° over a pattern clamps a head evenly; 90° at once does not, though the sum is the same. The two are "
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
    {.all = examine}};

}  // namespace sheafc
