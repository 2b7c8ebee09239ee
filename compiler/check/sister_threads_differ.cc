// SPDX-License-Identifier: GPL-2.0-or-later
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

void gather(const LinkedEntry& fastener, Facts& facts) {
  const std::string_view number = fastener.text("part-number"), drive = fastener.text("drive");
  const sheaf::Thread* thread = number.empty() || drive.empty() ? nullptr : fastener.thread("thread");
  const auto pitch = thread ? sheaf::pitch_mm(*thread) : std::nullopt;
  if (!pitch) return;
  const Likeness size = likeness({thread->diameter, drive}) + static_cast<Likeness>(thread->system);
  facts.add(fastener, likeness(size, number), *pitch);
}

void judge(FactGroup group, Look& look, Report& report) {
  if (all_say_the_same(group)) return;
  const LinkedEntry& first = look.entry(group.front());
  for (const Fact& fact : group) {
    if (fact.says == group.front().says) continue;
    const LinkedEntry& fastener = look.entry(fact);
    if (first.text("part-number") != fastener.text("part-number") || !same_but_pitch(first, fastener))
      continue;
    report(fastener, fastener.place("thread"),
           "part " + std::string(fastener.text("part-number")) + " has thread " +
               std::string(first.text("thread")) + " elsewhere; one of the two pitches is a slip",
           {other_place(first.place("thread"), "the other thread stands here")});
  }
}

}  // namespace

const Rule sister_threads_differ = {
    {.name = "sister-threads-differ",
     .severity = Severity::warning,
     .summary = "one part number with two pitches",
     .why =
         "A part has one thread. 1/4-20 and 1/4-28 take the same socket, M10x1.25 and M10x1.5 as well; the wrong one "
         "goes in three turns and then takes the thread with it.",
     .wrong = R"(fasteners:
  guard-bolt: { name: chain guard bolt, part-number: HK-1, thread: 1/4-20 UNC, drive: hexagon 7/16 in, torque: 9 N·m, state: dry }
  rack-bolt: { name: rack bolt, part-number: HK-1, thread: 1/4-28 UNF, drive: hexagon 7/16 in, torque: 9 N·m, state: dry }
)",
     .right = R"(fasteners:
  guard-bolt: { name: chain guard bolt, part-number: HK-1, thread: 1/4-20 UNC, drive: hexagon 7/16 in, torque: 9 N·m, state: dry }
  rack-bolt: { name: rack bolt, part-number: HK-2, thread: 1/4-28 UNF, drive: hexagon 7/16 in, torque: 9 N·m, state: dry }
)"},
    {.kind = "fastener", .gather = gather, .judge = judge}};

}  // namespace sheafc
