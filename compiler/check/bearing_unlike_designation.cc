// SPDX-License-Identifier: GPL-2.0-or-later
#include <cmath>

#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr double agreed_mm = 0.3;  // tapered widths are rounded on packets

std::string size_text(const BearingRow& row) {
  return sheaf::brief(row.bore) + "x" + sheaf::brief(row.outside) + "x" + sheaf::brief(row.width);
}

bool agrees(const sheaf::Size& size, const BearingRow& row) {
  const double wanted[] = {row.bore, row.outside, row.width};
  for (int i = 0; i < std::min(size.count, 3); ++i) {
    if (std::abs(sheaf::dimension_mm(size, i) - wanted[i]) > agreed_mm) return false;
  }
  return true;
}

void examine(const LinkedEntry& entry, const Shelf& shelf, Report& report) {
  const sheaf::Bearing* bearing = entry.bearing("designation");
  const sheaf::Size* size = entry.size("size");
  if (!bearing || !size || sheaf::compare(size->value[0], size->value[1]) >= 0) return;
  if (const BearingRow* row = shelf.bearing(bearing->basic)) {
    if (agrees(*size, *row)) return;
    report(entry, entry.place("size"),
           bearing->basic + " is " + size_text(*row) + ", not " + sheaf::to_text(*size),
           {other_place(entry.place("designation"), "the designation stands here")});
  } else if (bearing->bore_mm && std::abs(*bearing->bore_mm - sheaf::dimension_mm(*size, 0)) > agreed_mm) {
    report(entry, entry.place("size"),
           "the bore code of " + bearing->basic + " says " + sheaf::brief(*bearing->bore_mm) + " mm, not " +
               sheaf::brief(sheaf::dimension_mm(*size, 0)) + " mm",
           {other_place(entry.place("designation"), "the designation stands here")});
  }
}

}  // namespace

const Rule bearing_unlike_designation = {
    {.name = "bearing-unlike-designation",
     .severity = Severity::error,
     .summary = "a bearing whose designation means another size",
     .why =
         "A bearing's number fixes its size: ISO 15 and ISO 355, on the shelf as bearing sizes, and the bore code (00 "
         "is 10 mm, 01 12, 02 15, 03 17, from 04 on five times the code). One of the two was copied from another row.",
     .wrong = R"(bearings:
  wheel-bearing: { name: wheel bearing, designation: 6203-2RS, size: 17x42x12 }
)",
     .right = R"(bearings:
  wheel-bearing: { name: wheel bearing, designation: 6203-2RS, size: 17x40x12 }
)"},
    {.kind = "bearing", .entry = examine}};

}  // namespace sheafc
