// SPDX-License-Identifier: GPL-2.0-or-later
#include <unordered_map>

#include "compiler/check/peers.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

bool same_but_pitch(const LinkedEntry& left, const LinkedEntry& right) {
  const sheaf::Thread* a = left.thread("thread");
  const sheaf::Thread* b = right.thread("thread");
  if (!a || !b || a->system != b->system || a->diameter != b->diameter) return false;
  const auto p = sheaf::pitch_mm(*a), q = sheaf::pitch_mm(*b);
  return p && q && *p != *q && left.text("drive") == right.text("drive") && !left.text("drive").empty();
}

void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  std::unordered_map<std::string_view, std::vector<const LinkedEntry*>> by_part;
  for (const LinkedEntry* fastener : sheets.entries_of("fastener")) {
    const std::string_view number = fastener->text("part-number");
    if (!number.empty()) by_part[number].push_back(fastener);
  }
  for (const auto& [number, fasteners] : by_part) {
    for (const LinkedEntry* fastener : fasteners) {
      if (!same_but_pitch(*fasteners.front(), *fastener)) continue;
      report(*fastener, fastener->place("thread"),
             "part " + std::string(number) + " has thread " + std::string(fasteners.front()->text("thread")) + " elsewhere; one of the two pitches is a slip",
             {other_place(fasteners.front()->place("thread"), "the other thread stands here")});
    }
  }
}

}  // namespace

const Rule sister_threads_differ = {
    {.name = "sister-threads-differ",
     .severity = Severity::warning,
     .summary = "one part number with two pitches",
     .why = "A part has one thread. 1/4-20 and 1/4-28 take the same socket, M10x1.25 and M10x1.5 as well; the wrong one "
            "goes in three turns and then takes the thread with it.",
     .wrong = R"(fasteners:
  guard-bolt: { name: chain guard bolt, part-number: HK-1, thread: 1/4-20 UNC, drive: hexagon 7/16 in, torque: 9 N·m, state: dry }
  rack-bolt: { name: rack bolt, part-number: HK-1, thread: 1/4-28 UNF, drive: hexagon 7/16 in, torque: 9 N·m, state: dry }
)",
     .right = R"(fasteners:
  guard-bolt: { name: chain guard bolt, part-number: HK-1, thread: 1/4-20 UNC, drive: hexagon 7/16 in, torque: 9 N·m, state: dry }
  rack-bolt: { name: rack bolt, part-number: HK-2, thread: 1/4-28 UNF, drive: hexagon 7/16 in, torque: 9 N·m, state: dry }
)"},
    {.all = examine}};

}  // namespace sheafc
