// SPDX-License-Identifier: GPL-2.0-or-later
#include <cmath>

#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr double agreed_mm = 0.1;  // tables in mm are rounded from inches

void examine(const LinkedEntry& ring, const Shelf& shelf, Report& report) {
  const sheaf::Size* size = ring.size("size");
  if (!size || size->count < 2) return;
  const double inside = sheaf::dimension_mm(*size, 0), section = sheaf::dimension_mm(*size, 1);
  if (section >= inside && inside > 0) {
    report(ring, ring.place("size"),
           "an O-ring is written inside × section; a section of " + sheaf::brief(section) +
               " mm leaves no hole of " + sheaf::brief(inside) + " mm");
    return;
  }
  const LinkedEntry* row = shelf.o_ring(ring.text("code"));
  if (!row) return;
  const auto wanted_inside = middle_in(row->figure("inside"), "mm"),
             wanted_section = middle_in(row->figure("section"), "mm");
  if (!wanted_inside || !wanted_section) return;
  if (std::abs(inside - *wanted_inside) <= agreed_mm && std::abs(section - *wanted_section) <= agreed_mm)
    return;
  report(ring, ring.place("size"),
         std::string(ring.text("code")) + " is " + sheaf::brief(*wanted_inside) + "x" +
             sheaf::brief(*wanted_section) + " mm, not " + sheaf::to_text(*size),
         {other_place(ring.place("code"), "the code stands here")});
}

}  // namespace

const Rule o_ring_unlike_code = {
    {.name = "o-ring-unlike-code",
     .severity = Severity::error,
     .summary = "an O-ring whose code means another size, or that has no hole",
     .why =
         "The dash number fixes inside and section (SAE AS568, on the shelf as O-ring sizes). Sizes are written inside × "
         "section; the section is the thin one.",
     .wrong = R"(o-rings:
  cap-ring: { name: cap O-ring, size: 2.65x34.5 }
)",
     .right = R"(o-rings:
  cap-ring: { name: cap O-ring, size: 34.5x2.65 }
)"},
    {.kind = "o-ring", .entry = examine}};

}  // namespace sheafc
