// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/joint.h"
#include "compiler/check/measure.h"
#include "compiler/check/peers.h"
#include "compiler/check/rules.h"
#include "compiler/check/slip.h"

namespace sheafc {
namespace {

void gather(const LinkedSheets& sheets, PeerGroups& by_thread, PeerGroups& by_role) {
  Roles roles;
  for (const LinkedSheet& sheet : sheets.own()) {
    for (const LinkedEntry& entry : sheet.entries) {
      const auto torque = entry.kind == "fastener" ? torque_of_one_nm(entry) : std::nullopt;
      if (!torque || *torque <= 0) continue;
      const Peer peer{&entry, *torque, "torque"};
      if (const sheaf::Thread* thread = entry.thread("thread")) {
        by_thread.add(likeness({sheaf::thread_key(*thread), entry.choice("joint"), entry.text("class")}), peer);
      }
      by_role.add(likeness({roles.of(entry.name), sheet.assembly()}), peer);
    }
  }
}

void report_outlying(PeerGroups& groups, std::string_view alike, Report& report) {
  groups.judge_each([&](const Peer& peer, const PeerVerdict& verdict) {
    if (!verdict.outlying) return;
    const std::string slip = slip_of_ratio(verdict.ratio);
    report(*peer.entry, peer.entry->place("torque"),
           "is " + sheaf::brief(verdict.ratio > 1 ? verdict.ratio : 1 / verdict.ratio) + " times " +
               (verdict.ratio > 1 ? "as much as" : "less than") + " the " + about(verdict.median, "N·m") + " of " +
               std::to_string(verdict.others) + " " + std::string(alike) + (slip.empty() ? "" : "; " + slip));
  });
}

void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  PeerGroups by_thread, by_role;
  gather(sheets, by_thread, by_role);
  report_outlying(by_thread, "fasteners of the same thread, class and joint", report);
  report_outlying(by_role, "fasteners of the same name", report);
}

}  // namespace

const Rule torque_unlike_peers = {
    {.name = "torque-unlike-peers",
     .severity = Severity::warning,
     .summary = "a torque far from that of its like",
     .why = "Five or more fasteners of one thread, class and joint, or of one name on one kind of assembly, say together what "
            "is usual. One that stands threefold and over four median deviations (of the logarithm) from their median is "
            "more likely a slip than a rarity; the factor often names the slip. The thresholds are ours, no source.",
     .wrong = "",
     .right = ""},
    {.all = examine}};

}  // namespace sheafc
