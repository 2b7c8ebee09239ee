// SPDX-License-Identifier: GPL-2.0-or-later
// What the rules see on one sheet alone, and the facts it tells.
#include <algorithm>

#include "compiler/check/ledger.h"
#include "compiler/check/rule_set.h"
#include "query/library/vocabulary.h"

namespace sheafc {
namespace {

constexpr std::size_t facts_of_an_entry = 4;  // about

// A rule and its place among all.
struct Turn {
  std::uint8_t place;
  const Rule* rule;
};
using Turns = std::vector<Turn>;

// Whose turn it is: most rules look at entries of one kind alone.
class Order {
 public:
  Order() {
    for (const sheaf::KindDeclaration& kind : sheaf::all_kinds()) {
      of_kinds_.push_back(turns([&](const Examination& examine) {
        return looks_at_entries(examine) && (examine.kind.empty() || examine.kind == kind.name);
      }));
    }
    of_rows_ =
        turns([](const Examination& examine) { return looks_at_entries(examine) && examine.kind.empty(); });
    of_sheets_ = turns([](const Examination& examine) { return examine.sheet || examine.gather_sheet; });
  }

  const Turns& of_sheets() const { return of_sheets_; }
  const Turns& of(const LinkedEntry& entry) const {
    return entry.declaration
               ? of_kinds_[static_cast<std::size_t>(entry.declaration - sheaf::all_kinds().data())]
               : of_rows_;
  }

 private:
  static bool looks_at_entries(const Examination& examine) { return examine.entry || examine.gather; }
  static Turns turns(const auto& has_one) {
    Turns turns;
    std::uint8_t place = 0;
    for (const Rule* rule : all_check_rules()) {
      if (has_one(rule->examine)) turns.push_back({place, rule});
      ++place;
    }
    return turns;
  }

  std::vector<Turns> of_kinds_;  // in the order of the vocabulary
  Turns of_rows_, of_sheets_;
};

// The rules follow chains of pointers, and the processor would wait at each link. Asked for at once, all that
// they will read of a sheet comes side by side.
void bring_near(const LinkedSheet& sheet) {
  for (const LinkedEntry& entry : sheet.entries) {
    for (const Field* field : entry.all()) {
      if (const void* meaning = field->values.front().meaning.address()) __builtin_prefetch(meaning);
    }
  }
}

}  // namespace

// All rules at one entry, then all at the next: it is read from memory once.
void examine_sheet(const LinkedSheet& sheet, std::uint32_t number, const Shelf& shelf, Ledger& ledger,
                   Diagnostics& sink, SheetFacts& facts) {
  static const Order order;
  facts.facts.reserve(facts_of_an_entry * sheet.entries.size());
  bring_near(sheet);
  for (const auto& [place, rule] : order.of_sheets()) {
    Report report(rule->info, ledger, sink);
    Facts told(place, number, facts);
    if (rule->examine.sheet) rule->examine.sheet(sheet, shelf, report);
    if (rule->examine.gather_sheet) rule->examine.gather_sheet(sheet, told);
  }
  for (const LinkedEntry& entry : sheet.entries) {
    for (const auto& [place, rule] : order.of(entry)) {
      Report report(rule->info, ledger, sink);
      Facts told(place, number, facts);
      if (rule->examine.entry) rule->examine.entry(entry, shelf, report);
      if (rule->examine.gather) rule->examine.gather(entry, told);
    }
  }
}

namespace {

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

void Report::operator()(const LinkedEntry& entry, Span where, std::string message,
                        std::vector<Diagnostic> notes) {
  as(rule_.severity, entry, where, std::move(message), std::move(notes));
}

void Report::operator()(const LinkedSheet& sheet, Span where, std::string message,
                        std::vector<Diagnostic> notes) {
  if (where.line == 0) where = sheet.where();
  if (ledger_.allows(sheet, rule_.name)) return;
  sink_.report({rule_.severity, rule_.name, where, std::move(message), std::move(notes)});
}

Diagnostic other_place(Span where, std::string message) {
  return {Severity::note, {}, where, std::move(message), {}};
}

bool all_say_the_same(FactGroup group) {
  return std::ranges::all_of(group, [&](const Fact& fact) { return fact.says == group.front().says; });
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
