// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/fit_spans.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

void examine_sheet(const LinkedSheet& sheet, Report& report) {
  for (std::size_t i = 1; i < sheet.fits.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (!meet(sheet.fits[j], sheet.fits[i])) continue;
      report(sheet, sheet.fits[i].where, "this sheet already claims some of these machines",
             {other_place(sheet.fits[j].where, "here")});
    }
  }
}

// Successors: sheets on one assembly of one machine that give different figures for some year.
void examine_claims(const std::vector<Claim>& claims, Report& report) {
  for (std::size_t i = 1; i < claims.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (claims[i].sheet == claims[j].sheet || !meet(*claims[i].fit, *claims[j].fit)) continue;
      if (claims[i].sheet->text("maker") != claims[j].sheet->text("maker")) continue;
      const bool related = claims[i].sheet->base == claims[j].sheet || claims[j].sheet->base == claims[i].sheet ||
                           (claims[i].sheet->base && claims[i].sheet->base == claims[j].sheet->base);
      if (!related) continue;
      report(*claims[i].sheet, claims[i].fit->where,
             "'" + claims[j].sheet->name + "' claims some of the same years; part them by year, market or frame numbers",
             {other_place(claims[j].fit->where, "the other claim stands here")});
    }
  }
}

void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  for (const LinkedSheet& sheet : sheets.own()) examine_sheet(sheet, report);
  for (const auto& [question, claims] : claims_by_question(sheets)) examine_claims(claims, report);
}

}  // namespace

const Rule years_overlap = {
    {.name = "years-overlap",
     .severity = Severity::error,
     .summary = "a sheet and its successor that both claim a year",
     .why = "Where one sheet is based on another and both are for one assembly of one machine, each year belongs to one of "
            "them. An overlap gives two answers; a year that was split needs frame numbers or a market on both sides.",
     .wrong = R"(fits:
  - { make: Haldrek, model: Muleback 380, years: 2011..2015 }
  - { make: Haldrek, model: Muleback 380, years: 2015..2018 }
)",
     .right = R"(fits:
  - { make: Haldrek, model: Muleback 380, years: 2011..2014 }
  - { make: Haldrek, model: Muleback 380, years: 2015..2018 }
)"},
    {.all = examine}};

}  // namespace sheafc
