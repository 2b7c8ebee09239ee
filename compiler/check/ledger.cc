// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/ledger.h"

#include <algorithm>

#include "compiler/check/rule_set.h"
#include "compiler/link/link_rules.h"
#include "compiler/sheet/sheet_rules.h"
#include "compiler/sheet/suggestion.h"

namespace sheafc {

const RuleInfo allowance_unused = {
    .name = "allowance-unused",
    .severity = Severity::warning,
    .summary = "an allowance that allows nothing",
    .why =
        "A rule that is set aside where it finds nothing hides the day on which it would find something. "
        "Either the figure was mended or the rule changed: take the allowance out.",
    .wrong = R"(fasteners:
  guard-screw:
    name: chain guard screw
    thread: M6x1
    torque: 9 N·m
    state: dry
    allow: { unknown-pitch: special screw }
)",
    .right = R"(fasteners:
  guard-screw:
    name: chain guard screw
    thread: M6x1
    torque: 9 N·m
    state: dry
)"};

const RuleInfo allowance_ended = {
    .name = "allowance-ended",
    .severity = Severity::warning,
    .summary = "an allowance whose last day is past",
    .why =
        "An allowance with `until` is a promise to look again by that day. After it the rule speaks as before, "
        "and the allowance asks to be renewed with a new reason or taken out.",
    .wrong = "",
    .right = ""};

const RuleInfo allowance_of_no_rule = {
    .name = "allowance-of-no-rule",
    .severity = Severity::error,
    .summary = "an allowance of a rule that does not exist, or that cannot be set aside",
    .why =
        "Only the rules of the trade can be set aside: what the reader and the linker refuse has no meaning that a "
        "reason could supply. A misspelled rule would allow nothing and nobody would see it.",
    .wrong = R"(fasteners:
  guard-screw:
    name: chain guard screw
    thread: M6x1
    torque: 9 N·m
    state: dry
    allow: { unknown-pich: special screw }
)",
    .right = R"(fasteners:
  guard-screw:
    name: chain guard screw
    thread: M6x1
    torque: 9 N·m
    state: dry
)"};

namespace {

const Allowances* allowances_of(const Fields& fields) {
  const Value* allow = fields.value("allow");
  return allow ? allow->as<Allowances>() : nullptr;
}

const Rule* rule_named(std::string_view name) {
  for (const Rule* rule : all_check_rules()) {
    if (rule->info.name == name) return rule;
  }
  return nullptr;
}

std::string unknown_rule(std::string_view name) {
  const auto is_named = [&](const RuleInfo& rule) { return rule.name == name; };
  if (std::ranges::any_of(source_rules(), is_named) || std::ranges::any_of(sheet_rules(), is_named) ||
      std::ranges::any_of(link_rules(), is_named)) {
    return "rule '" + std::string(name) + "' cannot be set aside";
  }
  std::vector<std::string_view> names;
  for (const Rule* rule : all_check_rules()) names.push_back(rule->info.name);
  return "there is no rule '" + std::string(name) + "'" + did_you_mean(name, names);
}

}  // namespace

bool makes_allowances(const LinkedSheet& sheet) {
  return allowances_of(sheet) || std::ranges::any_of(sheet.entries, allowances_of);
}

bool Ledger::allows(const Fields& fields, std::string_view rule) {
  const Allowances* all = allowances_of(fields);
  if (!all) return false;
  const auto found = std::ranges::find(*all, rule, &Allowance::rule);
  if (found == all->end()) return false;
  const std::lock_guard lock(mutex_);
  used_.insert(place_of(*found));
  return !has_ended(found->until);
}

void Ledger::list(const Fields& fields, const std::string& address) {
  const Allowances* all = allowances_of(fields);
  if (!all) return;
  for (const Allowance& allowance : *all) {
    if (!seen_.insert(place_of(allowance)).second) continue;
    listed_.push_back({allowance.rule, address, allowance.reason, allowance.until, allowance.where});
  }
}

void Ledger::list(const LinkedSheet& sheet) {
  list(sheet, sheet.name);
  for (const LinkedEntry& entry : sheet.entries) list(entry, entry.address);
}

void Ledger::report(const Listed& allowance, Diagnostics& sink) const {
  if (!rule_named(allowance.rule)) {
    sink.error(allowance_of_no_rule.name, allowance.where, unknown_rule(allowance.rule));
  } else if (!used_.contains(place_of(allowance))) {
    sink.warning(allowance_unused.name, allowance.where,
                 "rule '" + allowance.rule + "' finds nothing here; take the allowance out");
  } else if (has_ended(allowance.until)) {
    sink.warning(
        allowance_ended.name, allowance.where,
        "the allowance ended on " + to_text(*allowance.until) + "; renew it with a reason, or take it out");
  }
}

std::vector<Allowed> Ledger::close(Diagnostics& sink) const {
  std::vector<Allowed> allowed;
  for (const Listed& allowance : listed_) {
    report(allowance, sink);
    if (const Rule* rule = rule_named(allowance.rule)) {
      allowed.push_back(
          {rule->info.name, allowance.address, allowance.reason, allowance.until, allowance.where});
    }
  }
  return allowed;
}

}  // namespace sheafc
