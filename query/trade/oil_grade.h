// SPDX-License-Identifier: GPL-2.0-or-later
// The grade that a viscosity falls in, by the rows of a table of grades (ISO 3448 at 40 °C; SAE J300 and
// J306 at 100 °C), and how two oils compare where only their viscosities can tell.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "query/quantity/result.h"

namespace sheaf {

// The limits of a grade, mm²/s at the table's temperature. ISO limits include both ends; the upper limits
// of SAE J300 and J306 do not.
struct GradeRow {
  std::string name;
  double least = 0;
  std::optional<double> most;
  bool most_excluded = false;
};

// Grades may overlap (SAE 8 to 20) and may leave gaps (ISO 3448 does, most of the scale): then `below` and
// `above` are the neighbours, and the oil is of neither.
struct GradeVerdict {
  std::vector<std::string> grades;
  std::string below, above;
};
Result<GradeVerdict> grade_of(double mm2_s, std::span<const GradeRow> rows);

// ISO 3448: the limits of a grade are 10 % below and above its midpoint, at 40 °C.
GradeRow iso_grade(std::string name, double midpoint);

// Labels such as "10W" on damper oils are no scale: only mm²/s at one temperature compare.
struct ViscosityComparison {
  double ratio = 1;     // second over first
  double per_cent = 0;  // how much thicker (or, below 0, thinner) the second is
};
Result<ViscosityComparison> compare_viscosity(double first_mm2_s, double second_mm2_s);

}  // namespace sheaf
