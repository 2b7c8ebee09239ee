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

void gather(const LinkedEntry& entry, Facts& facts) {
  if (!entry.declaration) return;  // rows of tables differ on purpose
  std::uint8_t part = 0;
  for (const Field* field : entry.all()) {
    if (const auto number = number_of(*field)) {
      const Likeness alike = likeness(role_likeness(entry.name), entry.sheet->assembly());
      facts.add(entry, likeness(likeness(alike, entry.kind), field->key()), *number).part = part;
    }
    ++part;
  }
}

// What fills a machine goes by its size: up to fivefold between a small one and a large one is common
// practice, no source. A slipped decimal is still seen.
bool goes_by_size(const LinkedEntry& entry, const PeerVerdict& verdict) {
  return entry.kind == "fluid" && std::abs(std::log(verdict.ratio)) < std::log(5.0);
}

void judge(FactGroup group, Look& look, Report& report) {
  if (!may_hold_outlying(group)) return;
  judge_each(group, [&](const Fact& peer, const PeerVerdict& verdict) {
    if (!verdict.outlying) return;
    const LinkedEntry& entry = look.entry(peer);
    if (goes_by_size(entry, verdict)) return;
    const std::string slip = slip_of_ratio(verdict.ratio);
    report(entry, entry.all()[peer.part]->values.front().where,
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
     .why =
         "Like torque-unlike-peers, for every other quantity: five or more entries of one kind, assembly and name say "
         "what is usual. Amounts of fluid may differ up to fivefold, for machines do. The thresholds are ours, no source.",
     .wrong = "",
     .right = ""},
    {.gather = gather, .judge = judge}};

}  // namespace sheafc
