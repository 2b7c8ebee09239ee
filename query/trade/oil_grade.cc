// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/oil_grade.h"

#include "query/trade/band.h"

namespace sheaf {
namespace {

constexpr Band viscosities{0.2, 2e7};

bool is_below(double v, const GradeRow& row) { return v < row.least; }
bool is_above(double v, const GradeRow& row) {
  return row.most && (row.most_excluded ? v >= *row.most : v > *row.most);
}

}  // namespace

Result<GradeVerdict> grade_of(double mm2_s, std::span<const GradeRow> rows) {
  if (auto failure = outside_range({{"viscosity", mm2_s, viscosities, "mm²/s"}})) return *failure;
  GradeVerdict verdict;
  const GradeRow* below = nullptr;
  const GradeRow* above = nullptr;
  for (const GradeRow& row : rows) {
    if (is_below(mm2_s, row)) {
      if (!above || row.least < above->least) above = &row;
    } else if (is_above(mm2_s, row)) {
      if (!below || *row.most > *below->most) below = &row;
    } else {
      verdict.grades.push_back(row.name);
    }
  }
  if (below) verdict.below = below->name;
  if (above) verdict.above = above->name;
  return verdict;
}

GradeRow iso_grade(std::string name, double midpoint) {
  return {std::move(name), midpoint * 0.9, midpoint * 1.1, false};
}

Result<ViscosityComparison> compare_viscosity(double first_mm2_s, double second_mm2_s) {
  if (auto failure = outside_range({{"viscosity", first_mm2_s, viscosities, "mm²/s"},
                                    {"viscosity", second_mm2_s, viscosities, "mm²/s"}})) {
    return *failure;
  }
  const double ratio = second_mm2_s / first_mm2_s;
  return ViscosityComparison{ratio, (ratio - 1) * 100};
}

}  // namespace sheaf
