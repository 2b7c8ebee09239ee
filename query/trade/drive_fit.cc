// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/drive_fit.h"

#include <algorithm>
#include <cmath>

namespace sheaf {
namespace {

constexpr double same_mm = 0.02;  // an inch hexagon's decimal is rounded to 0.01 mm at worst

bool same(double left, double right) { return std::abs(left - right) <= same_mm; }

// A twelve-point tool grips a hexagon, and twelve-point heads have their widths.
Drive::Shape shape_in_tables(Drive::Shape shape) {
  return shape == Drive::Shape::twelve_point ? Drive::Shape::hexagon : shape;
}

}  // namespace

DriveVerdict judge_drive(const Drive& drive, double diameter_mm, std::span<const DriveRow> rows) {
  DriveVerdict verdict;
  const std::optional<double> across = across_flats_mm(drive);
  const Drive::Shape shape = shape_in_tables(drive.shape);
  const bool hexagon = shape == Drive::Shape::hexagon;
  if (!across || (!hexagon && shape != Drive::Shape::hex_socket)) return verdict;

  for (const DriveRow& row : rows) {
    if (row.shape != shape || !same(row.diameter_mm, diameter_mm)) continue;
    verdict.usual_mm.push_back(row.across_mm);
    if (same(row.across_mm, *across)) verdict.kinds.push_back(row.kind);
  }
  std::sort(verdict.usual_mm.begin(), verdict.usual_mm.end());
  verdict.usual_mm.erase(std::unique(verdict.usual_mm.begin(), verdict.usual_mm.end(), same),
                         verdict.usual_mm.end());

  const bool possible = hexagon ? *across > diameter_mm : *across < diameter_mm;
  if (!verdict.kinds.empty()) {
    verdict.fit = DriveVerdict::Fit::listed;
  } else if (!possible) {
    verdict.fit = DriveVerdict::Fit::impossible;
  } else if (!verdict.usual_mm.empty()) {
    verdict.fit = DriveVerdict::Fit::unlisted;
  }
  return verdict;
}

}  // namespace sheaf
