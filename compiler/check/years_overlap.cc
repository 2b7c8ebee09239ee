// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/fit_spans.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

void examine(const LinkedSheet& sheet, const Shelf&, Report& report) {
  for (std::size_t i = 1; i < sheet.fits.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (!meet(sheet.fits[j], sheet.fits[i])) continue;
      report(sheet, sheet.fits[i].where, "this sheet already claims some of these machines",
             {other_place(sheet.fits[j].where, "here")});
    }
  }
}

// Successors: a base and what is based on it, among them those of one base, by one maker.
void gather(const LinkedSheet& sheet, Facts& facts) {
  add_claims(sheet, {sheet.text("maker"), sheet.name}, facts);
  if (sheet.base) add_claims(sheet, {sheet.text("maker"), sheet.base->name}, facts);
}

// Two that give different figures for some year.
void judge(FactGroup group, Look& look, Report& report) {
  for (std::size_t i = 1; i < group.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (group[i].sheet == group[j].sheet || !group[i].years_meet(group[j])) continue;
      const LinkedSheet& sheet = look.sheet(group[i]);
      const LinkedSheet& other = look.sheet(group[j]);
      const Fit& fit = sheet.fits[group[i].entry];
      if (!meet(fit, other.fits[group[j].entry])) continue;
      report(sheet, fit.where,
             "'" + other.name + "' claims some of the same years; part them by year, market or frame numbers",
             {other_place(other.fits[group[j].entry].where, "the other claim stands here")});
    }
  }
}

}  // namespace

const Rule years_overlap = {
    {.name = "years-overlap",
     .severity = Severity::error,
     .summary = "a sheet and its successor that both claim a year",
     .why =
         "Where one sheet is based on another and both are for one assembly of one machine, each year belongs to one of "
         "them. An overlap gives two answers; a year that was split needs frame numbers or a market on both sides.",
     .wrong = R"(fits:
  - { make: Haldrek, model: Muleback 380, years: 2011..2015 }
  - { make: Haldrek, model: Muleback 380, years: 2015..2018 }
)",
     .right = R"(fits:
  - { make: Haldrek, model: Muleback 380, years: 2011..2014 }
  - { make: Haldrek, model: Muleback 380, years: 2015..2018 }
)"},
    {.sheet = examine, .gather_sheet = gather, .judge = judge}};

}  // namespace sheafc
