// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <bit>
#include <cmath>
#include <set>
#include <span>
#include <unordered_map>

#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr double alike_share = 0.95;
constexpr std::size_t fewest_values = 12;

using Statements = std::span<const std::uint32_t>;  // hashes, ascending; one for each place that says it

// Everything that an assembly's own entries state, without what says where it comes from.
std::vector<std::uint32_t> statements_of(const LinkedSheet& sheet) {
  constexpr std::string_view says_whence[] = {"name", "notes", "checked", "source"};
  std::vector<std::uint32_t> all;
  for (const LinkedEntry& entry : sheet.entries) {
    if (entry.inherited || entry.has("same-as")) continue;
    const Likeness place = likeness({entry.id});
    for (const Field* field : entry.all()) {
      if (std::ranges::find(says_whence, field->key()) != std::end(says_whence)) continue;
      const Likeness key = likeness(place, field->key());
      for (const Value& value : field->values) {
        if (!value.text.empty()) all.push_back(static_cast<std::uint32_t>(likeness(key, value.text) >> 32));
      }
    }
  }
  std::ranges::sort(all);
  return all;
}

void gather(const LinkedSheet& sheet, Facts& facts) {
  if (sheet.assembly().empty()) return;
  auto statements = statements_of(sheet);
  if (statements.size() < fewest_values) return;
  facts.add(likeness({sheet.assembly(), sheet.text("maker")}), statements.size());
  facts.set_statements(std::move(statements));
}

std::size_t shared(Statements left, Statements right) {
  std::size_t count = 0;
  for (auto l = left.begin(), r = right.begin(); l != left.end() && r != right.end();) {
    if (*l == *r)
      ++count, ++l, ++r;
    else if (*l < *r)
      ++l;
    else
      ++r;
  }
  return count;
}

bool alike(Statements left, Statements right) {
  const std::size_t most = std::max(left.size(), right.size());
  return static_cast<double>(shared(left, right)) >= alike_share * static_cast<double>(most);
}

// How often each statement is made, at its hash's last bits; where two share a count both look more common.
class Counts {
 public:
  explicit Counts(std::size_t statements) : counts_(std::bit_ceil(2 * statements)) {}

  void add(std::uint32_t statement) { ++counts_[statement & (counts_.size() - 1)]; }
  std::uint32_t of(std::uint32_t statement) const { return counts_[statement & (counts_.size() - 1)]; }

 private:
  std::vector<std::uint32_t> counts_;
};

// Two sheets alike in that share of what the longer says have one of their rarest statements in common: so
// many that what is left of a sheet is less than the share. Only sheets that meet there are compared.
std::vector<std::uint32_t> rarest(Statements statements, const Counts& counts) {
  std::vector<std::pair<std::uint32_t, std::uint32_t>> ordered;
  ordered.reserve(statements.size());
  for (const std::uint32_t statement : statements) ordered.emplace_back(counts.of(statement), statement);
  const auto needed =
      static_cast<std::ptrdiff_t>(std::ceil(alike_share * static_cast<double>(ordered.size())));
  const auto end = ordered.end() - needed + 1;
  std::ranges::partial_sort(ordered, end);
  std::vector<std::uint32_t> rare;
  for (const auto& [count, statement] : std::span(ordered.begin(), end)) {
    if (rare.empty() || rare.back() != statement) rare.push_back(statement);
  }
  return rare;
}

void judge(FactGroup group, Look& look, Report& report) {
  if (group.size() < 2) return;
  std::size_t statements = 0;  // of all, which is what the fact about a sheet says
  for (const Fact& fact : group) statements += fact.says;
  Counts counts(statements);
  for (const Fact& fact : group) {
    for (const std::uint32_t statement : look.statements(fact)) counts.add(statement);
  }
  std::unordered_map<std::uint32_t, std::vector<const Fact*>> seen;
  for (const Fact& fact : group) {
    std::set<const Fact*> met;
    for (const std::uint32_t statement : rarest(look.statements(fact), counts)) {
      if (counts.of(statement) < 2) continue;
      auto& others = seen[statement];
      met.insert(others.begin(), others.end());
      others.push_back(&fact);
    }
    for (const Fact* other : met) {
      if (!alike(look.statements(fact), look.statements(*other))) continue;
      const LinkedSheet& sheet = look.sheet(fact);
      const LinkedSheet& twin = look.sheet(*other);
      report(sheet, sheet.where(),
             "nearly everything here stands on '" + twin.name +
                 "' as well; a copied block? base this sheet on it (based-on) and state what differs",
             {other_place(twin.where(), "its twin")});
    }
  }
}

}  // namespace

const Rule twin_sheets = {
    {.name = "twin-sheets",
     .severity = Severity::warning,
     .summary = "two sheets that say nearly the same under different names",
     .why =
         "A sheet for a new year that repeats the old one, figure by figure, was mostly copied and not yet changed. If "
         "the figures really carried over, `based-on` says so and keeps the two from drifting apart; entries that are "
         "equal on purpose say `same-as`.",
     .wrong = "",
     .right = ""},
    {.gather_sheet = gather, .judge = judge}};

}  // namespace sheafc
