// SPDX-License-Identifier: GPL-2.0-or-later
#include <cmath>

#include "compiler/check/measure.h"
#include "compiler/check/peers.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr double near_double = 0.12;  // of the logarithm

bool is_double(double ratio) { return std::abs(std::log(ratio / 2)) < near_double; }

// Oil that stands in the tube up to its level below the rim needs a tube; half of it does, too.
void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  PeerGroups groups;
  for (const LinkedEntry* fluid : sheets.entries_of("fluid")) {
    for (const std::string_view key : {"volume", "dry-fill", "after-drain"}) {
      const sheaf::Statement* statement = fluid->figure(key);
      const auto ml = middle_in(statement, "mL");
      if (!ml || *ml <= 0 || statement->per.empty()) continue;
      groups.add(likeness({key, statement->per, fluid->choice("purpose")}), {fluid, *ml, key});
    }
  }
  groups.judge_each([&](const Peer& peer, const PeerVerdict& verdict) {
    if (!is_double(verdict.ratio)) return;
    report(*peer.entry, peer.entry->place(peer.key),
           "is twice the " + about(verdict.median, "mL") + " of " + std::to_string(verdict.others) +
               " others; is it the amount for both?");
  });
}

}  // namespace

const Rule pair_for_leg = {
    {.name = "pair-for-leg",
     .severity = Severity::warning,
     .summary = "an amount per leg that is twice what others take",
     .why = "Papers give oil for one leg, or for both. An amount `per leg` at twice the median of five or more others is "
            "most likely the pair's.",
     .wrong = "",
     .right = ""},
    {.all = examine}};

}  // namespace sheafc
