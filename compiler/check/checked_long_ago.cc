// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr int years_until_old = 3;

// 20261128: dates as numbers that sort.
constexpr std::uint64_t a_year = 10'000;

void gather(const LinkedSheet& sheet, Facts& facts) {
  const Fields* checked = sheet.record("checked");
  const Date* date = checked ? checked->date("on") : nullptr;
  if (date)
    facts.add(0, static_cast<std::uint64_t>(date->year) * a_year +
                     static_cast<std::uint64_t>(date->month * 100 + date->day));
}

// Old against the newest check of the run: the same sheets give the same reports on any day.
void judge(FactGroup group, Look& look, Report& report) {
  const std::uint64_t newest = std::ranges::max_element(group, {}, &Fact::says)->says;
  for (const Fact& fact : group) {
    if (fact.says + years_until_old * a_year >= newest) continue;
    const LinkedSheet& sheet = look.sheet(fact);
    if (sheet.assembly().empty()) continue;
    report(sheet, sheet.place("checked"),
           "last checked on " + to_text(*sheet.record("checked")->date("on")) +
               ", over three years before the newest check; read it against its source again");
  }
}

}  // namespace

const Rule checked_long_ago = {
    {.name = "checked-long-ago",
     .severity = Severity::note,
     .summary = "a sheet whose last check lies three years behind the others",
     .why =
         "Makers revise their papers. A sheet that nobody has read against its source for three years, counted from the "
         "newest check among the sheets, is worth another look.",
     .wrong = "",
     .right = ""},
    {.gather_sheet = gather, .judge = judge}};

}  // namespace sheafc
