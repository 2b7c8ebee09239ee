// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <cmath>
#include <set>
#include <span>
#include <unordered_map>

#include "compiler/check/likeness.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr double alike_share = 0.95;
constexpr std::size_t fewest_values = 12;

using Statements = std::vector<std::size_t>;  // hashes, sorted; one for each place that says it

// Everything that an assembly's own entries state, without what says where it comes from.
Statements statements_of(const LinkedSheet& sheet) {
  constexpr std::string_view says_whence[] = {"name", "notes", "checked", "source"};
  Statements all;
  for (const LinkedEntry& entry : sheet.entries) {
    if (entry.inherited || entry.has("same-as")) continue;
    const Likeness place = likeness({entry.id});
    for (const Field* field : entry.all()) {
      if (std::ranges::find(says_whence, field->key()) != std::end(says_whence)) continue;
      for (const Value& value : field->values) {
        if (value.text.empty()) continue;
        all.push_back(likeness(likeness(place, field->key()), value.text));
      }
    }
  }
  std::ranges::sort(all);
  return all;
}

std::size_t shared(const Statements& left, const Statements& right) {
  std::size_t count = 0;
  for (auto l = left.begin(), r = right.begin(); l != left.end() && r != right.end();) {
    if (*l == *r) ++count, ++l, ++r;
    else if (*l < *r) ++l;
    else ++r;
  }
  return count;
}

struct Candidate {
  const LinkedSheet* sheet;
  Statements statements;
};
// How often each statement is made, at its hash's last bits; where two share a count both look more common.
class Counts {
 public:
  void add(std::size_t statement) { ++counts_[statement % counts_.size()]; }
  std::size_t of(std::size_t statement) const { return counts_[statement % counts_.size()]; }

 private:
  std::vector<unsigned> counts_ = std::vector<unsigned>(1 << 18);
};

// Two sheets alike in that share of what the longer says have one of their rarest statements in common: so many that
// what is left of a sheet is less than the share. Only sheets that meet there are compared.
Statements rarest(const Statements& statements, const Counts& counts) {
  std::vector<std::pair<std::size_t, std::size_t>> ordered;
  for (const std::size_t statement : statements) ordered.emplace_back(counts.of(statement), statement);
  const auto needed = static_cast<std::ptrdiff_t>(std::ceil(alike_share * static_cast<double>(ordered.size())));
  const auto end = ordered.end() - needed + 1;
  std::ranges::partial_sort(ordered, end);
  Statements rare;
  for (const auto& [count, statement] : std::span(ordered.begin(), end)) {
    if (rare.empty() || rare.back() != statement) rare.push_back(statement);
  }
  return rare;
}

bool alike(const Candidate& left, const Candidate& right) {
  if (left.sheet->assembly() != right.sheet->assembly() || left.sheet->text("maker") != right.sheet->text("maker")) return false;
  const std::size_t most = std::max(left.statements.size(), right.statements.size());
  return static_cast<double>(shared(left.statements, right.statements)) >= alike_share * static_cast<double>(most);
}

std::vector<Candidate> candidates_of(const LinkedSheets& sheets) {
  std::vector<Candidate> candidates;
  for (const LinkedSheet& sheet : sheets.own()) {
    if (sheet.assembly().empty()) continue;
    if (auto statements = statements_of(sheet); statements.size() >= fewest_values) candidates.push_back({&sheet, std::move(statements)});
  }
  return candidates;
}

void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  const std::vector<Candidate> candidates = candidates_of(sheets);
  Counts counts;
  for (const Candidate& candidate : candidates) {
    for (const std::size_t statement : candidate.statements) counts.add(statement);
  }
  std::unordered_map<std::size_t, std::vector<const Candidate*>> seen;
  for (const Candidate& candidate : candidates) {
    std::set<const Candidate*> met;
    for (const std::size_t statement : rarest(candidate.statements, counts)) {
      auto& others = seen[statement];
      met.insert(others.begin(), others.end());
      others.push_back(&candidate);
    }
    for (const Candidate* other : met) {
      if (!alike(candidate, *other)) continue;
      report(*candidate.sheet, candidate.sheet->where(),
             "nearly everything here stands on '" + other->sheet->name + "' as well; a copied block? base this sheet on it (based-on) and state what differs",
             {other_place(other->sheet->where(), "its twin")});
    }
  }
}

}  // namespace

const Rule twin_sheets = {
    {.name = "twin-sheets",
     .severity = Severity::warning,
     .summary = "two sheets that say nearly the same under different names",
     .why = "A sheet for a new year that repeats the old one, figure by figure, was mostly copied and not yet changed. If "
            "the figures really carried over, `based-on` says so and keeps the two from drifting apart; entries that are "
            "equal on purpose say `same-as`.",
     .wrong = "",
     .right = ""},
    {.all = examine}};

}  // namespace sheafc
