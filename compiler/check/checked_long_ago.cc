// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr int years_until_old = 3;

// Old against the newest check of the run: the same sheets give the same reports on any day.
void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  const Date* newest = nullptr;
  const auto date_of = [](const LinkedSheet& sheet) {
    const Fields* checked = sheet.record("checked");
    return checked ? checked->date("on") : nullptr;
  };
  for (const LinkedSheet& sheet : sheets.own()) {
    const Date* date = date_of(sheet);
    if (date && (!newest || *newest < *date)) newest = date;
  }
  for (const LinkedSheet& sheet : sheets.own()) {
    const Date* date = date_of(sheet);
    if (!date || sheet.assembly().empty()) continue;
    const Date still_fresh{date->year + years_until_old, date->month, date->day};
    if (!(still_fresh < *newest)) continue;
    report(sheet, sheet.place("checked"),
           "last checked on " + to_text(*date) + ", over three years before the newest check; read it against its source again");
  }
}

}  // namespace

const Rule checked_long_ago = {
    {.name = "checked-long-ago",
     .severity = Severity::note,
     .summary = "a sheet whose last check lies three years behind the others",
     .why = "Makers revise their papers. A sheet that nobody has read against its source for three years, counted from the "
            "newest check among the sheets, is worth another look.",
     .wrong = "",
     .right = ""},
    {.all = examine}};

}  // namespace sheafc
