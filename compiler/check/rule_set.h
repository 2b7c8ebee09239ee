// SPDX-License-Identifier: GPL-2.0-or-later
// What a rule is, for those who write one: a file of its own with one Rule in it, listed in rule_set.cc.
//
//   void examine(const LinkedEntry& seal, const Shelf&, Report& report) {
//     if (...) report(seal, seal.place("size"), "inside 54 is not smaller than outside 41");
//   }
//   extern const Rule seal_inside_out = {{.name = "seal-inside-out", ...}, {.entry = examine}};
//
// A message must not name its own entry: an inherited value is then reported once, where it is written.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/check/facts.h"
#include "compiler/check/shelf.h"
#include "compiler/link/linked_sheets.h"
#include "compiler/source/diagnostics.h"
#include "compiler/source/rule.h"

namespace sheafc {

class Ledger;

// Takes the reports of one rule; drops, and books, those that the entry or its sheet allows.
class Report {
 public:
  Report(const RuleInfo& rule, Ledger& ledger, Diagnostics& sink)
      : rule_(rule), ledger_(ledger), sink_(sink) {}

  void operator()(const LinkedEntry& entry, Span where, std::string message,
                  std::vector<Diagnostic> notes = {});
  void operator()(const LinkedSheet& sheet, Span where, std::string message,
                  std::vector<Diagnostic> notes = {});
  // The same with another severity than the rule's own.
  void as(Severity severity, const LinkedEntry& entry, Span where, std::string message,
          std::vector<Diagnostic> notes = {});

 private:
  const RuleInfo& rule_;
  Ledger& ledger_;
  Diagnostics& sink_;
};

// A place that a report points at besides its own.
Diagnostic other_place(Span where, std::string message);

// Takes the sheets and entries that facts speak of from wherever they are: in memory, or on the disk.
class Look {
 public:
  virtual ~Look() = default;
  // Both live until all is judged.
  virtual const LinkedSheet& sheet(const Fact& fact) = 0;
  virtual std::span<const std::uint32_t> statements(const Fact& fact) = 0;
  const LinkedEntry& entry(const Fact& fact) { return sheet(fact).entries[fact.entry]; }
};

using FactGroup = std::span<const Fact>;

bool all_say_the_same(FactGroup group);

// What the rule looks at: every entry by itself, every sheet by itself, or sheets among each other. The last
// in two steps: what each entry and each sheet tells, and what those facts of all sheets that are alike show
// together, in the order of sheets and entries. All but `judge` run on all cores and must keep nothing.
struct Examination {
  std::string_view kind = {};  // which entries alone; empty: all, and the rows of tables
  void (*entry)(const LinkedEntry&, const Shelf&, Report&) = nullptr;
  void (*sheet)(const LinkedSheet&, const Shelf&, Report&) = nullptr;
  void (*gather)(const LinkedEntry&, Facts&) = nullptr;
  void (*gather_sheet)(const LinkedSheet&, Facts&) = nullptr;
  void (*judge)(FactGroup group, Look& look, Report&) = nullptr;
};

struct Rule {
  RuleInfo info;
  Examination examine;
};

std::span<const Rule* const> all_check_rules();

// Every rule that sees one sheet alone, and the facts that it tells the others. `number` is its place among
// all.
void examine_sheet(const LinkedSheet& sheet, std::uint32_t number, const Shelf& shelf, Ledger& ledger,
                   Diagnostics& sink, SheetFacts& facts);

}  // namespace sheafc
