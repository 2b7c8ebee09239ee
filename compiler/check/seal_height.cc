// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/rules.h"
#include "query/trade/band.h"

namespace sheafc {
namespace {

// Heights of fork, dust and shaft seals as sold (common practice, no source).
constexpr sheaf::Band heights_mm{3, 20};
// The ring between inside and outside: room for a lip, its spring and a case.
constexpr sheaf::Band walls_mm{2, 15};

// Seals of brake pistons are plain rings, and those of valve stems little caps.
bool has_case(const LinkedEntry& seal) {
  const std::string_view use = seal.choice("use");
  return use != "brake-piston" && use != "valve-stem" && use != "other";
}

void examine(const LinkedEntry& seal, const Shelf&, Report& report) {
  const sheaf::Size* size = has_case(seal) ? seal.size("size") : nullptr;
  if (!size || size->count < 2) return;
  const double inside = sheaf::dimension_mm(*size, 0), outside = sheaf::dimension_mm(*size, 1);
  const double wall = (outside - inside) / 2;
  if (wall <= 0) return;  // seal-inside-out speaks
  if (!walls_mm.holds(wall)) {
    report(seal, seal.place("size"),
           "between " + sheaf::brief(inside) + " and " + sheaf::brief(outside) + " mm is a ring of " +
               sheaf::brief(wall) + " mm; seals have 2 to 15 mm");
    return;
  }
  if (size->count < 3) return;
  const double height = sheaf::dimension_mm(*size, 2);
  if (heights_mm.holds(height) && height < outside / 2) return;
  report(seal, seal.place("size"),
         "a seal " + sheaf::brief(height) + " mm high does not exist at this diameter (3 to 20 mm do)");
}

}  // namespace

const Rule seal_height = {
    {.name = "seal-height",
     .severity = Severity::error,
     .summary = "a seal whose height or ring cannot be",
     .why =
         "Fork, dust and shaft seals are 3 to 20 mm high, never higher than half their outside, and leave 2 to 15 mm "
         "for case and lip. A height outside is a lost decimal point: 95 for 9.5. Piston rings of brakes and "
         "caps of valve stems are left alone. The limits are common practice, no "
         "source.",
     .wrong = R"(seals:
  oil-seal: { name: fork oil seal, size: 48x58x95, use: fork-oil }
)",
     .right = R"(seals:
  oil-seal: { name: fork oil seal, size: 48x58x9.5, use: fork-oil }
)"},
    {.kind = "seal", .entry = examine}};

}  // namespace sheafc
