// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/joint.h"
#include "compiler/check/measure.h"
#include "compiler/check/peers.h"
#include "compiler/check/rules.h"
#include "compiler/check/slip.h"

namespace sheafc {
namespace {

enum class Among : std::uint8_t { thread, role };

void gather(const LinkedEntry& fastener, Facts& facts) {
  const auto torque = torque_of_one_nm(fastener);
  if (!torque || *torque <= 0) return;
  const auto add = [&](Among among, Likeness alike) {
    facts.add(fastener, alike, *torque).part = static_cast<std::uint8_t>(among);
  };
  if (const sheaf::Thread* thread = fastener.thread("thread"))
    add(Among::thread,
        likeness({sheaf::thread_key(*thread), fastener.choice("joint"), fastener.text("class")}));
  add(Among::role, likeness(role_likeness(fastener.name), fastener.sheet->assembly()));
}

void judge(FactGroup group, Look& look, Report& report) {
  if (!may_hold_outlying(group)) return;
  judge_each(group, [&](const Fact& peer, const PeerVerdict& verdict) {
    if (!verdict.outlying) return;
    const LinkedEntry& entry = look.entry(peer);
    const std::string slip = slip_of_ratio(verdict.ratio);
    report(entry, entry.place("torque"),
           "is " + sheaf::brief(verdict.ratio > 1 ? verdict.ratio : 1 / verdict.ratio) + " times " +
               (verdict.ratio > 1 ? "as much as" : "less than") + " the " + about(verdict.median, "N·m") +
               " of " + std::to_string(verdict.others) +
               (peer.part == static_cast<std::uint8_t>(Among::thread)
                    ? " fasteners of the same thread, class and joint"
                    : " fasteners of the same name") +
               (slip.empty() ? "" : "; " + slip));
  });
}

}  // namespace

const Rule torque_unlike_peers = {
    {.name = "torque-unlike-peers",
     .severity = Severity::warning,
     .summary = "a torque far from that of its like",
     .why =
         "Five or more fasteners of one thread, class and joint, or of one name on one kind of assembly, say together what "
         "is usual. One that stands threefold and over four median deviations (of the logarithm) from their median is "
         "more likely a slip than a rarity; the factor often names the slip. The thresholds are ours, no source.",
     .wrong = "",
     .right = ""},
    {.kind = "fastener", .gather = gather, .judge = judge}};

}  // namespace sheafc
