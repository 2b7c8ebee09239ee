// SPDX-License-Identifier: GPL-2.0-or-later
// Limits and fits of ISO 286: what "30 H7/g6" allows, and whether a measured part is inside.
//
//   shaft a..h     es = fundamental deviation, ei = es − IT              ISO 286-1:2010
//   shaft k..zc    ei = fundamental deviation, es = ei + IT
//   hole A..H      EI = −es of the same letter                           the same, general rule
//   hole K..ZC     ES = −ei + Δ, Δ = IT(n) − IT(n−1) for K M N up to IT8 and P..ZC up to IT7; else Δ = 0
//   js, JS         ± IT/2
//   check          IT5 to IT11 = 7 10 16 25 40 64 100 · i, i = 0.45 ∛D + 0.001 D µm, D the geometric mean
//                  of the range in mm; printed widths are rounded, by up to a tenth
//                  (to 3 mm, by up to a sixth)
//
// Sizes in mm, over 0 to 500; deviations and widths in µm. The widths and deviations themselves are
// rows of the standard's tables, and reach these functions as arguments.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "query/quantity/number.h"
#include "query/quantity/result.h"
#include "query/trade/band.h"

namespace sheaf {

struct ToleranceRow {
  int grade = 0;  // 7 for IT7
  double over_mm = 0, up_to_mm = 0;
  double width_um = 0;
};

// The fundamental deviation of a shaft letter; it may hold for some grades only (k for IT4 to IT7).
struct DeviationRow {
  std::string letter;
  int grade_from = 1, grade_to = 18;
  double over_mm = 0, up_to_mm = 0;
  double deviation_um = 0;
};

struct ToleranceTables {
  std::span<const ToleranceRow> tolerances;
  std::span<const DeviationRow> deviations;
};

// "H7", "g6", "js6": capitals are holes.
struct ToleranceClass {
  std::string letter;
  int grade = 0;
  bool hole = false;
};
Result<ToleranceClass> parse_tolerance_class(std::string_view text);

// "30 H7/g6", "H7/g6", "30H7", "ø30 g6".
struct FitDesignation {
  std::optional<Number> nominal;
  std::optional<ToleranceClass> hole, shaft;
};
Result<FitDesignation> parse_fit(std::string_view text, Input input);

struct Limits {
  double nominal_mm = 0;
  double lower_um = 0, upper_um = 0;
  Band mm() const { return {nominal_mm + lower_um / 1000, nominal_mm + upper_um / 1000}; }
};
Result<Limits> limits_of(double nominal_mm, const ToleranceClass& tolerance, const ToleranceTables& tables);

// Clearance in µm; below 0 it is interference.
struct Fit {
  enum class Kind { clearance, transition, interference };
  Kind kind = Kind::clearance;
  Band clearance_um;
};
Fit fit_of(const Limits& hole, const Limits& shaft);
std::string_view name_of(Fit::Kind kind);

// A measurement near a limit cannot tell: its uncertainty reaches over it.
enum class Inspection { inside, outside, cannot_tell };
Inspection inspect(double measured_mm, double uncertainty_mm, const Limits& limits);

// What the standard's formula gives for a range, before its rounding. Grades 5 to 11.
Result<double> formula_tolerance_um(int grade, double over_mm, double up_to_mm);

}  // namespace sheaf
