// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

void examine(const LinkedEntry& setting, const Shelf&, Report& report) {
  const sheaf::Statement* standard = setting.figure("standard");
  const sheaf::Statement* range = setting.figure("range");
  if (!standard || !range || !standard->figure().unit) return;
  const std::string_view unit = standard->figure().unit->symbol;
  const auto band = band_in(standard->figure(), unit);
  const auto whole = band_in(range->figure(), unit);
  if (!band) return;
  if (!whole) {
    report(setting, setting.place("range"), "the range is not counted in the unit of the standard setting",
           {other_place(setting.place("standard"), "the standard setting stands here")});
    return;
  }
  const double least = whole->least == whole->most ? 0 : whole->least;  // "20 clicks" in all
  if (band->least >= least && band->most <= whole->most) return;
  report(setting, setting.place("standard"),
         setting.values("standard").front().text + " lies outside the range " +
             setting.values("range").front().text,
         {other_place(setting.place("range"), "the range stands here")});
}

}  // namespace

const Rule setting_outside_range = {
    {.name = "setting-outside-range",
     .severity = Severity::error,
     .summary = "a standard setting that the adjuster cannot reach",
     .why =
         "The standard setting lies within the adjuster's range, counted from the same end. If it does not, one of the "
         "two was counted from the other end, or belongs to another adjuster.",
     .wrong = R"(settings:
  rebound: { name: rebound, standard: 24 clicks out, range: 0..20 clicks, count-from: fully in }
)",
     .right = R"(settings:
  rebound: { name: rebound, standard: 14 clicks out, range: 0..20 clicks, count-from: fully in }
)"},
    {.kind = "setting", .entry = examine}};

}  // namespace sheafc
