// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/judge.h"

#include <algorithm>
#include <array>

#include "compiler/sheet/parallel.h"

namespace sheafc {
namespace {

// Sorting in parts that no group crosses is work for all cores.
constexpr std::size_t parts = 64;
using Part = std::vector<Fact>;

std::size_t part_of(const Fact& fact) { return fact.alike >> 58; }

std::array<Part, parts> parted(const std::vector<SheetFacts>& sheets) {
  std::array<std::size_t, parts> counts{};
  for (const SheetFacts& sheet : sheets) {
    for (const Fact& fact : sheet.facts) ++counts[part_of(fact)];
  }
  std::array<Part, parts> all;
  for (std::size_t i = 0; i < parts; ++i) all[i].reserve(counts[i]);
  for (const SheetFacts& sheet : sheets) {
    for (const Fact& fact : sheet.facts) all[part_of(fact)].push_back(fact);
  }
  return all;
}

void judge_part(const Part& facts, Look& look, Ledger& ledger, Diagnostics& sink) {
  for (std::size_t first = 0, end = 0; first < facts.size(); first = end) {
    while (end < facts.size() && facts[end].alike == facts[first].alike) ++end;
    const Rule& rule = *all_check_rules()[facts[first].rule];
    Report report(rule.info, ledger, sink);
    rule.examine.judge(FactGroup(facts).subspan(first, end - first), look, report);
  }
}

}  // namespace

void judge_facts(const std::vector<SheetFacts>& sheets, Look& look, Ledger& ledger, Diagnostics& sink,
                 unsigned threads) {
  auto all = parted(sheets);
  for_all(parts, [&](std::size_t i) { std::ranges::stable_sort(all[i], {}, &Fact::alike); }, threads);
  for (const Part& part : all) judge_part(part, look, ledger, sink);
}

}  // namespace sheafc
