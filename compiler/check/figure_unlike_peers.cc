// SPDX-License-Identifier: GPL-2.0-or-later
#include <cmath>

#include "compiler/check/measure.h"
#include "compiler/check/peers.h"
#include "compiler/check/rules.h"
#include "compiler/check/slip.h"

namespace sheafc {
namespace {

// The one number of a field, in its base unit; torques have a rule of their own.
std::optional<double> number_of(const Field& field) {
  if (field.declaration->type != sheaf::ValueType::figure || field.values.size() != 1) return {};
  const auto* statement = field.values.front().as<sheaf::Statement>();
  if (!statement || !statement->figure().unit) return {};
  const auto value = middle_in(statement, sheaf::base_of(statement->figure().unit->dimension));
  return value && *value > 0 ? value : std::nullopt;
}

// What fills a machine goes by its size: up to fivefold between a small one and a large one is common practice, no
// source. A slipped decimal is still seen.
bool goes_by_size(const Peer& peer, const PeerVerdict& verdict) {
  return peer.entry->kind == "fluid" && std::abs(std::log(verdict.ratio)) < std::log(5.0);
}

PeerGroups gather(const LinkedSheets& sheets) {
  PeerGroups groups;
  Roles roles;
  for (const LinkedSheet& sheet : sheets.own()) {
    for (const LinkedEntry& entry : sheet.entries) {
      if (!entry.declaration) continue;  // rows of tables differ on purpose
      for (const Field* field : entry.all()) {
        const auto number = number_of(*field);
        if (!number) continue;
        groups.add(likeness({entry.kind, sheet.assembly(), roles.of(entry.name), field->key()}), {&entry, *number, field->key()});
      }
    }
  }
  return groups;
}

void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  gather(sheets).judge_each([&](const Peer& peer, const PeerVerdict& verdict) {
    if (!verdict.outlying || goes_by_size(peer, verdict)) return;
    const std::string slip = slip_of_ratio(verdict.ratio);
    report(*peer.entry, peer.entry->place(peer.key),
           "is " + sheaf::brief(std::round(verdict.ratio * 100) / 100) + " times the median of " +
               std::to_string(verdict.others) + " others of the same name" +
               (slip.find("decimal") == std::string::npos ? "" : "; " + slip));
  });
}

}  // namespace

const Rule figure_unlike_peers = {
    {.name = "figure-unlike-peers",
     .severity = Severity::warning,
     .summary = "a figure far from that of five others of the same name",
     .why = "Like torque-unlike-peers, for every other quantity: five or more entries of one kind, assembly and name say "
            "what is usual. Amounts of fluid may differ up to fivefold, for machines do. The thresholds are ours, no source.",
     .wrong = "",
     .right = ""},
    {.all = examine}};

}  // namespace sheafc
