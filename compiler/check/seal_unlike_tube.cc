// SPDX-License-Identifier: GPL-2.0-or-later
#include <cmath>

#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr double agreed_mm = 0.15;    // nominal sizes, and 0.1 for one that was measured
constexpr double dust_bore_mm = 1.0;  // a dust seal's outside grips over the housing

bool is_of_fork(const LinkedEntry& seal) {
  return seal.choice("use") == "fork-oil" || seal.choice("use") == "fork-dust";
}

struct Partner {
  double mm;
  Span where;
};

// What the seal runs on or sits in: its own word first, then its sheet's.
std::optional<Partner> partner(const LinkedEntry& seal, std::string_view own, std::string_view of_sheet,
                               bool ask_sheet) {
  if (const auto mm = middle_in(seal.figure(own), "mm")) return Partner{*mm, seal.place(own)};
  if (!ask_sheet || !seal.sheet) return {};
  if (const auto mm = middle_in(seal.sheet->figure(of_sheet), "mm"))
    return Partner{*mm, seal.sheet->place(of_sheet)};
  return {};
}

void compare(const LinkedEntry& seal, double size, const std::optional<Partner>& other, double agreed,
             std::string_view side, std::string_view what, Report& report) {
  if (!other || std::abs(size - other->mm) <= agreed) return;
  report(seal, seal.place("size"),
         "the seal's " + std::string(side) + " is " + sheaf::brief(size) + " mm, but the " +
             std::string(what) + " is " + sheaf::brief(other->mm) + " mm",
         {other_place(other->where, "the " + std::string(what) + " is given here")});
}

void examine(const LinkedEntry& seal, const Shelf&, Report& report) {
  const sheaf::Size* size = seal.size("size");
  if (!size || size->count < 2 || sheaf::compare(size->value[0], size->value[1]) >= 0) return;
  const bool dust = seal.choice("use") == "fork-dust";
  compare(seal, sheaf::dimension_mm(*size, 0), partner(seal, "tube", "tube", is_of_fork(seal)), agreed_mm,
          "inside", "tube", report);
  compare(seal, sheaf::dimension_mm(*size, 1),
          partner(seal, "bore", "seal-bore", seal.choice("use") == "fork-oil"),
          dust ? dust_bore_mm : agreed_mm, "outside", "bore", report);
}

}  // namespace

const Rule seal_unlike_tube = {
    {.name = "seal-unlike-tube",
     .severity = Severity::error,
     .summary = "a seal that does not fit the tube it runs on or the bore it sits in",
     .why =
         "Inside and tube, outside and bore are the same nominal size, to 0.15 mm. They stand on one sheet twice, so a "
         "slip in either shows. The tolerance is common practice, no source.",
     .wrong = R"(tube: 48 mm
seals:
  oil-seal: { name: fork oil seal, size: 46x58x9.5, use: fork-oil }
)",
     .right = R"(tube: 48 mm
seals:
  oil-seal: { name: fork oil seal, size: 48x58x9.5, use: fork-oil }
)"},
    {.kind = "seal", .entry = examine}};

}  // namespace sheafc
