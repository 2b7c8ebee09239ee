// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

bool has_state(const LinkedEntry& fastener, std::string_view state) {
  for (const Value& value : fastener.values("state")) {
    if (value.text == state) return true;
  }
  return false;
}

void examine(const LinkedEntry& fastener, const Shelf&, Report& report) {
  const bool locked = has_state(fastener, "threadlocker") || fastener.has("threadlocker");
  for (const std::string_view state : {"oiled", "greased", "anti-seize"}) {
    if (!locked || !has_state(fastener, state)) continue;
    report(fastener, fastener.place("state"),
           "threadlocker does not hold on a thread that is " +
               (state == "anti-seize" ? std::string("pasted with anti-seize") : std::string(state)) +
               "; which of the two is meant?");
    return;
  }
  if (has_state(fastener, "dry") && fastener.values("state").size() > 1) {
    report(fastener, fastener.place("state"), "a thread cannot be dry and something else");
  }
}

}  // namespace

const Rule lubricated_and_locked = {
    {.name = "lubricated-and-locked",
     .severity = Severity::warning,
     .summary = "states of a thread that exclude each other",
     .why =
         "Threadlocker needs a clean thread; oil or grease under it keeps it from setting. A sheet that lists both has "
         "mostly mixed up head and thread, or two rows.",
     .wrong = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, torque: 22 N·m, state: [oiled, threadlocker] }
)",
     .right = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, torque: 22 N·m, state: threadlocker, threadlocker: medium }
)"},
    {.kind = "fastener", .entry = examine}};

}  // namespace sheafc
