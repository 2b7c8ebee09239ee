// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

void examine(const LinkedEntry& fastener, const Shelf&, Report& report) {
  if (!fastener.critical || !fastener.has("torque") || fastener.has("state")) return;
  report(
      fastener, fastener.place("torque"),
      "this joint is critical and nothing says what is on its thread; write state: dry, oiled, greased, threadlocker, "
      "anti-seize, or source-silent if the source does not say");
}

}  // namespace

const Rule state_missing = {
    {.name = "state-missing",
     .severity = Severity::error,
     .summary = "a torque on brakes, steering or a wheel without the state of its thread",
     .why =
         "The same torque on an oiled thread pulls far harder than on a dry one, and public papers assume opposite "
         "defaults. On a joint that holds brakes, steering or a wheel the sheet must say which is meant. "
         "`source-silent` is an answer: it is shown, and the reader decides.",
     .wrong = R"(assembly: front-wheel
checked: { on: 2026-10-02, by: workshop, second: N. }
fasteners:
  axle-nut: { name: front axle nut, thread: M14x1.5, joint: axle, torque: 60 N·m, cautions: [wheel-work] }
)",
     .right = R"(assembly: front-wheel
checked: { on: 2026-10-02, by: workshop, second: N. }
fasteners:
  axle-nut: { name: front axle nut, thread: M14x1.5, joint: axle, torque: 60 N·m, state: greased, cautions: [wheel-work] }
)"},
    {.kind = "fastener", .entry = examine}};

}  // namespace sheafc
