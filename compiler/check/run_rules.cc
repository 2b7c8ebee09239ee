// SPDX-License-Identifier: GPL-2.0-or-later
// One task a sheet for the rules that look at entries and sheets alone, then the rules that need all.
#include "compiler/check/check.h"
#include "compiler/check/ledger.h"
#include "compiler/check/rule_set.h"
#include "compiler/sheet/parallel.h"

namespace sheafc {
namespace {

void examine_sheet(const LinkedSheet& sheet, const Shelf& shelf, Ledger& ledger, Diagnostics& sink) {
  for (const Rule* rule : all_check_rules()) {
    Report report(rule->info, ledger, sink);
    if (rule->examine.sheet) rule->examine.sheet(sheet, shelf, report);
    if (!rule->examine.entry) continue;
    for (const LinkedEntry& entry : sheet.entries) rule->examine.entry(entry, shelf, report);
  }
}

void examine_all(const LinkedSheets& sheets, const Shelf& shelf, Ledger& ledger, Diagnostics& sink) {
  for (const Rule* rule : all_check_rules()) {
    if (!rule->examine.all) continue;
    Report report(rule->info, ledger, sink);
    rule->examine.all(sheets, shelf, report);
  }
}

// What is allowed on the entry, or on its sheet for all of it.
bool is_allowed(Ledger& ledger, const LinkedEntry& entry, std::string_view rule) {
  return ledger.allows(entry, rule) || (entry.sheet && ledger.allows(*entry.sheet, rule));
}

}  // namespace

void Report::as(Severity severity, const LinkedEntry& entry, Span where, std::string message,
                std::vector<Diagnostic> notes) {
  if (where.line == 0) where = entry.where;
  if (entry.sheet && entry.sheet->borrowed) return;
  if (is_allowed(ledger_, entry, rule_.name)) return;
  sink_.report({severity, rule_.name, where, std::move(message), std::move(notes)});
}

void Report::operator()(const LinkedEntry& entry, Span where, std::string message, std::vector<Diagnostic> notes) {
  as(rule_.severity, entry, where, std::move(message), std::move(notes));
}

void Report::operator()(const LinkedSheet& sheet, Span where, std::string message, std::vector<Diagnostic> notes) {
  if (where.line == 0) where = sheet.where();
  if (ledger_.allows(sheet, rule_.name)) return;
  sink_.report({rule_.severity, rule_.name, where, std::move(message), std::move(notes)});
}

Diagnostic other_place(Span where, std::string message) {
  return {Severity::note, {}, where, std::move(message), {}};
}

std::vector<Allowed> run_rules(const LinkedSheets& sheets, const CheckOptions& options, Diagnostics& sink) {
  const Shelf shelf(sheets);
  Ledger ledger(options.today);
  std::vector<Diagnostics> sinks(sheets.own().size());
  for_all(sinks.size(), [&](std::size_t i) { examine_sheet(sheets.own()[i], shelf, ledger, sinks[i]); },
          options.threads);
  for (Diagnostics& reports : sinks) sink.take(std::move(reports));
  examine_all(sheets, shelf, ledger, sink);
  return ledger.close(sheets, sink);
}

std::span<const RuleInfo> check_rules() {
  static const std::vector<RuleInfo> infos = [] {
    std::vector<RuleInfo> all;
    for (const Rule* rule : all_check_rules()) all.push_back(rule->info);
    all.insert(all.end(), {allowance_unused, allowance_ended, allowance_of_no_rule});
    return all;
  }();
  return infos;
}

}  // namespace sheafc
