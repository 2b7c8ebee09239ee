// SPDX-License-Identifier: GPL-2.0-or-later
#include <map>
#include <set>

#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr double alike_share = 0.95;
constexpr std::size_t fewest_values = 12;

// Everything that an assembly's own entries state, without what says where it comes from.
std::multiset<std::string> statements_of(const LinkedSheet& sheet) {
  std::multiset<std::string> all;
  for (const LinkedEntry& entry : sheet.entries) {
    if (entry.inherited || entry.has("same-as")) continue;
    for (const Field* field : entry.all()) {
      if (field->key() == "name" || field->key() == "notes" || field->key() == "checked" || field->key() == "source") continue;
      for (const Value& value : field->values) {
        if (!value.text.empty()) all.insert(entry.id + "|" + std::string(field->key()) + "|" + value.text);
      }
    }
  }
  return all;
}

std::size_t shared(const std::multiset<std::string>& left, const std::multiset<std::string>& right) {
  std::size_t count = 0;
  for (auto l = left.begin(), r = right.begin(); l != left.end() && r != right.end();) {
    if (*l == *r) ++count, ++l, ++r;
    else if (*l < *r) ++l;
    else ++r;
  }
  return count;
}

void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  struct Seen {
    const LinkedSheet* sheet;
    std::multiset<std::string> statements;
  };
  std::map<std::string, std::vector<Seen>> by_assembly;
  for (const LinkedSheet& sheet : sheets.own()) {
    if (sheet.assembly().empty()) continue;
    auto statements = statements_of(sheet);
    if (statements.size() < fewest_values) continue;
    auto& others = by_assembly[std::string(sheet.assembly()) + "|" + std::string(sheet.text("maker"))];
    for (const Seen& other : others) {
      const std::size_t most = std::max(statements.size(), other.statements.size());
      if (static_cast<double>(shared(statements, other.statements)) < alike_share * static_cast<double>(most)) continue;
      report(sheet, sheet.where(),
             "nearly everything here stands on '" + other.sheet->name + "' as well; a copied block? base this sheet on it (based-on) and state what differs",
             {other_place(other.sheet->where(), "its twin")});
    }
    others.push_back({&sheet, std::move(statements)});
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
