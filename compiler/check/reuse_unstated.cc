// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr double stretching_degrees = 45;

void examine(const LinkedEntry& fastener, const Shelf&, Report& report) {
  const sheaf::Statement* torque = fastener.figure("torque");
  if (!torque || fastener.has("reuse") || turned_further_degrees(*torque) <= stretching_degrees) return;
  report(fastener, fastener.place("torque"),
         "a fastener turned " + sheaf::brief(turned_further_degrees(*torque)) +
             "° further may have been stretched for good; write reuse: yes, no or inspect");
}

}  // namespace

const Rule reuse_unstated = {
    {.name = "reuse-unstated",
     .severity = Severity::error,
     .summary = "tightened by angle, and nothing says whether it may be used again",
     .why =
         "Tightening by an angle over 45° often takes a screw to its yield. Not every such screw is for one use, so "
         "the rule does not guess: the sheet must say what the source says. The limit of 45° is common practice, no "
         "source.",
     .wrong = R"(fasteners:
  head-bolt: { name: head bolt, thread: M9x1.25, torque: 25 N·m + 90°, state: oiled }
)",
     .right = R"(fasteners:
  head-bolt: { name: head bolt, thread: M9x1.25, torque: 25 N·m + 90°, state: oiled, reuse: no }
)"},
    {.kind = "fastener", .entry = examine}};

}  // namespace sheafc
