// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/judge.h"

#include <algorithm>
#include <array>
#include <set>

#include "compiler/sheet/parallel.h"

namespace sheafc {
namespace {

// Sorting in parts that no group crosses is work for all cores.
constexpr std::size_t parts = 64;

std::size_t part_of(const Fact& fact) { return fact.alike >> 58; }

class NotedLook : public Look {
 public:
  explicit NotedLook(Look& look) : look_(look) {}
  const LinkedSheet& sheet(const Fact& fact) override {
    looked_at.insert(fact.sheet);
    return look_.sheet(fact);
  }
  std::span<const std::uint32_t> statements(const Fact& fact) override { return look_.statements(fact); }

  std::set<std::uint32_t> looked_at;

 private:
  Look& look_;
};

}  // namespace

std::vector<Fact> in_groups(std::vector<SheetFacts>& sheets, unsigned threads) {
  std::array<std::size_t, parts + 1> ends{};  // of each part; first its beginning
  for (const SheetFacts& sheet : sheets) {
    for (const Fact& fact : sheet.facts) ++ends[part_of(fact) + 1];
  }
  for (std::size_t i = 0; i < parts; ++i) ends[i + 1] += ends[i];
  const auto begins = ends;
  std::vector<Fact> all(ends[parts]);
  for (SheetFacts& sheet : sheets) {
    for (const Fact& fact : sheet.facts) all[ends[part_of(fact)]++] = fact;
    sheet.facts = {};
  }
  for_all(
      parts,
      [&](std::size_t i) {
        const auto at = all.begin();
        std::ranges::stable_sort(at + static_cast<std::ptrdiff_t>(begins[i]),
                                 at + static_cast<std::ptrdiff_t>(begins[i + 1]), {}, &Fact::alike);
      },
      threads);
  return all;
}

FactGroup group_at(std::span<const Fact> facts) {
  std::size_t end = facts.empty() ? 0 : 1;
  while (end < facts.size() && facts[end].alike == facts.front().alike) ++end;
  return facts.first(end);
}

std::optional<GroupFindings> judge_group(FactGroup group, Look& look, Ledger& ledger) {
  const Rule& rule = *all_check_rules()[group.front().rule];
  GroupFindings findings;
  NotedLook noted(look);
  Report report(rule.info, ledger, findings.reports);
  rule.examine.judge(group, noted, report);
  if (noted.looked_at.empty()) return std::nullopt;
  findings.alike = group.front().alike;
  findings.looked_at.assign(noted.looked_at.begin(), noted.looked_at.end());
  return findings;
}

}  // namespace sheafc
