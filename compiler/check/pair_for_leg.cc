// SPDX-License-Identifier: GPL-2.0-or-later
#include <cmath>

#include "compiler/check/measure.h"
#include "compiler/check/peers.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr double near_double = 0.12;  // of the logarithm

bool is_double(double ratio) { return std::abs(std::log(ratio / 2)) < near_double; }

constexpr std::string_view amounts[] = {"volume", "dry-fill", "after-drain"};

void gather(const LinkedEntry& fluid, Facts& facts) {
  for (std::uint8_t part = 0; part < std::size(amounts); ++part) {
    const sheaf::Statement* statement = fluid.figure(amounts[part]);
    const auto ml = middle_in(statement, "mL");
    if (!ml || *ml <= 0 || statement->per.empty()) continue;
    facts.add(fluid, likeness({amounts[part], statement->per, fluid.choice("purpose")}), *ml).part = part;
  }
}

// Oil that stands in the tube up to its level below the rim needs a tube; half of it does, too.
void judge(FactGroup group, Look& look, Report& report) {
  judge_each(group, [&](const Fact& peer, const PeerVerdict& verdict) {
    if (!is_double(verdict.ratio)) return;
    const LinkedEntry& fluid = look.entry(peer);
    report(fluid, fluid.place(amounts[peer.part]),
           "is twice the " + about(verdict.median, "mL") + " of " + std::to_string(verdict.others) +
               " others; is it the amount for both?");
  });
}

}  // namespace

const Rule pair_for_leg = {
    {.name = "pair-for-leg",
     .severity = Severity::warning,
     .summary = "an amount per leg that is twice what others take",
     .why =
         "Papers give oil for one leg, or for both. An amount `per leg` at twice the median of five or more others is "
         "most likely the pair's.",
     .wrong = "",
     .right = ""},
    {.kind = "fluid", .gather = gather, .judge = judge}};

}  // namespace sheafc
