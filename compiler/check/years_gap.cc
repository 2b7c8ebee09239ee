// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "compiler/check/fit_spans.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

std::string years_between(int last, int next) {
  return last + 1 == next - 1 ? std::to_string(last + 1) : std::to_string(last + 1) + " to " + std::to_string(next - 1);
}

void examine_claims(std::vector<Claim>& claims, Report& report) {
  std::ranges::stable_sort(claims, {}, [](const Claim& claim) { return first_year(claim.fit->years); });
  int last = last_year(claims.front().fit->years);
  for (const Claim& claim : claims) {
    if (first_year(claim.fit->years) > last + 1) {
      report(*claim.sheet, claim.fit->where,
             "no sheet speaks of this assembly of the " + claim.fit->model + " for " + years_between(last, claim.fit->years.from));
    }
    last = std::max(last, last_year(claim.fit->years));
  }
}

void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  auto all = claims_by_question(sheets);
  for (auto& [question, claims] : all) examine_claims(claims, report);
}

}  // namespace

const Rule years_gap = {
    {.name = "years-gap",
     .severity = Severity::note,
     .summary = "years between two sheets of one assembly that none covers",
     .why = "Between a sheet for 2011 to 2014 and its successor from 2016 on, nobody who asks for 2015 is answered. The "
            "machine may not have been sold in that year, so this is a note.",
     .wrong = R"(fits:
  - { make: Haldrek, model: Muleback 380, years: 2011..2014 }
  - { make: Haldrek, model: Muleback 380, years: 2016..2018 }
)",
     .right = R"(fits:
  - { make: Haldrek, model: Muleback 380, years: 2011..2015 }
  - { make: Haldrek, model: Muleback 380, years: 2016..2018 }
)"},
    {.all = examine}};

}  // namespace sheafc
