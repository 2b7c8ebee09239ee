// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "compiler/check/fit_spans.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

std::string years_between(int last, int next) {
  return last + 1 == next - 1 ? std::to_string(last + 1)
                              : std::to_string(last + 1) + " to " + std::to_string(next - 1);
}

void judge(FactGroup group, Look& look, Report& report) {
  std::vector<const Fact*> claims;
  for (const Fact& fact : group) claims.push_back(&fact);
  std::ranges::stable_sort(claims, {}, [](const Fact* claim) { return claim->from; });
  int last = claims.front()->to;
  for (const Fact* claim : claims) {
    if (claim->from > last + 1) {
      const LinkedSheet& sheet = look.sheet(*claim);
      const Fit& fit = sheet.fits[claim->entry];
      report(sheet, fit.where,
             "no sheet speaks of this assembly of the " + fit.model + " for " +
                 years_between(last, claim->from));
    }
    last = std::max<int>(last, claim->to);
  }
}

void gather(const LinkedSheet& sheet, Facts& facts) { add_claims(sheet, {}, facts); }

}  // namespace

const Rule years_gap = {
    {.name = "years-gap",
     .severity = Severity::note,
     .summary = "years between two sheets of one assembly that none covers",
     .why =
         "Between a sheet for 2011 to 2014 and its successor from 2016 on, nobody who asks for 2015 is answered. The "
         "machine may not have been sold in that year, so this is a note.",
     .wrong = R"(fits:
  - { make: Haldrek, model: Muleback 380, years: 2011..2014 }
  - { make: Haldrek, model: Muleback 380, years: 2016..2018 }
)",
     .right = R"(fits:
  - { make: Haldrek, model: Muleback 380, years: 2011..2015 }
  - { make: Haldrek, model: Muleback 380, years: 2016..2018 }
)"},
    {.gather_sheet = gather, .judge = judge}};

}  // namespace sheafc
