// SPDX-License-Identifier: GPL-2.0-or-later
// Two years of one fork: if the level moved, the volume moved with it, by the bore.
#include <algorithm>
#include <cmath>

#include "compiler/check/measure.h"
#include "compiler/check/rules.h"
#include "query/trade/oil_volume.h"

namespace sheafc {
namespace {

constexpr double least_move_mm = 8;
constexpr double agreed_share = 0.35;
// Without a bore on the sheet: tubes are 3 to 6 mm thicker than their bore all told.
constexpr double wall_mm = 4.5;

struct Filling {
  const LinkedEntry* fluid;
  double level_mm, ml;
};

std::optional<Filling> filling_of(const LinkedEntry& fluid) {
  if (fluid.kind != "fluid" || fluid.choice("purpose") != "fork-oil") return {};
  const sheaf::Statement* volume = fluid.figure("volume");
  const auto level = middle_in(fluid.figure("level"), "mm"), ml = middle_in(volume, "mL");
  if (!level || !ml || volume->per != "leg") return {};
  return Filling{&fluid, *level, *ml};
}

std::string text_of(const Filling& filling, std::string_view key) {
  return sheaf::to_text(filling.fluid->figure(key)->figure());
}

std::optional<double> bore_of(const LinkedSheet& sheet) {
  if (const auto bore = middle_in(sheet.figure("tube-bore"), "mm")) return bore;
  if (const auto tube = middle_in(sheet.figure("tube"), "mm")) return *tube - wall_mm;
  return {};
}

void compare(const Filling& before, const Filling& after, double bore, Report& report) {
  const double move = before.level_mm - after.level_mm;  // a smaller level is more oil
  const auto per_mm = sheaf::volume_per_mm(bore, 0);
  if (!per_mm) return;
  const double expected = move * *per_mm, found = after.ml - before.ml;
  const double size = std::max(std::abs(expected), std::abs(found));
  if (std::max(std::abs(move), std::abs(found) / *per_mm) < least_move_mm) return;
  if (std::abs(expected - found) <= agreed_share * size + *per_mm * 3) return;
  report(*after.fluid, after.fluid->place("level"),
         "against " + text_of(before, "level") + " and " + text_of(before, "volume") +
             " elsewhere, a level moved by " + sheaf::brief(std::round(std::abs(move))) + " mm is " +
             about(std::abs(expected), "mL") + " in a bore of " + sheaf::brief(bore) +
             " mm, but the volume differs by " + about(std::abs(found), "mL"),
         {other_place(before.fluid->place("level"), "the other level stands here")});
}

const LinkedEntry* in_base(const LinkedSheet& sheet, const LinkedEntry& fluid) {
  if (!sheet.base || fluid.inherited) return nullptr;
  const auto found = std::ranges::find(sheet.base->entries, fluid.id, &LinkedEntry::id);
  return found == sheet.base->entries.end() ? nullptr : &*found;
}

// Bases and variants are the same fork by their own word.
void examine(const LinkedSheet& sheet, const Shelf&, Report& report) {
  const auto bore = bore_of(sheet);
  if (!bore) return;
  for (const LinkedEntry& fluid : sheet.entries) {
    const auto after = filling_of(fluid);
    if (!after) continue;
    for (const LinkedEntry* other = &fluid; other != sheet.entries.data() && (--other)->id == fluid.id;) {
      if (const auto before = filling_of(*other)) compare(*before, *after, *bore, report);
    }
    const LinkedEntry* base = in_base(sheet, fluid);
    if (const auto before = base ? filling_of(*base) : std::nullopt) compare(*before, *after, *bore, report);
  }
}

}  // namespace

const Rule level_unlike_volume = {
    {.name = "level-unlike-volume",
     .severity = Severity::warning,
     .summary = "a level that changed between years while the volume did not follow",
     .why =
         "One millimetre of level is the area of the bore: 1.13 mL in a 38 mm bore. Where a fork's later sheet or variant "
         "changes level and volume, the two must change together within 35 %; a level alone was mostly mistyped. Spring "
         "and spacer may account for the rest. The tolerance is common practice, no source.",
     .wrong = R"(tube: 41 mm
tube-bore: 38 mm
fits: { make: Haldrek, model: Muleback 380, years: 2011..2015 }
fluids:
  fork-oil:
    name: fork oil
    purpose: fork-oil
    label-only: yes
    volume: 512 mL per leg
    variants:
      - { years: 2011..2012, level: "118 mm below the rim, spring out, fork compressed" }
      - { years: 2013..2015, level: "78 mm below the rim, spring out, fork compressed" }
)",
     .right = R"(tube: 41 mm
tube-bore: 38 mm
fits: { make: Haldrek, model: Muleback 380, years: 2011..2015 }
fluids:
  fork-oil:
    name: fork oil
    purpose: fork-oil
    label-only: yes
    variants:
      - { years: 2011..2012, volume: 512 mL per leg, level: "118 mm below the rim, spring out, fork compressed" }
      - { years: 2013..2015, volume: 557 mL per leg, level: "78 mm below the rim, spring out, fork compressed" }
)"},
    {.sheet = examine}};

}  // namespace sheafc
