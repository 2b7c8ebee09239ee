// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/limits_fits.h"

#include <cmath>

#include "query/trade/reader.h"

namespace sheaf {
namespace {

constexpr Band sizes{1e-3, 500};

// The case of the letters tells hole from shaft, so they are read from the text itself.
std::optional<ToleranceClass> take_class(Reader& reader) {
  const std::size_t start = reader.mark();
  while (reader.peek() >= 'a' && reader.peek() <= 'z' && reader.mark() - start < 2)
    reader.back_to(reader.mark() + 1);
  const std::string letters(reader.source_since(start));
  const std::optional<int> grade = reader.take_integer();
  const bool one_case =
      !letters.empty() && (letters == lower_case(letters) || letters == upper_case(letters));
  if (!one_case || !grade || *grade < 1 || *grade > 18 || !reader.at_word_end()) {
    reader.back_to(start);
    return std::nullopt;
  }
  return ToleranceClass{lower_case(letters), *grade, letters != lower_case(letters)};
}

Result<double> width_of(int grade, double nominal, std::span<const ToleranceRow> rows) {
  for (const ToleranceRow& row : rows) {
    if (row.grade == grade && nominal > row.over_mm && nominal <= row.up_to_mm) return row.width_um;
  }
  return Failure{"the tables have no IT" + std::to_string(grade) + " for " + brief(nominal) + " mm"};
}

Result<double> deviation_of(const std::string& letter, int grade, double nominal,
                            std::span<const DeviationRow> rows) {
  if (letter == "h") return 0.0;
  for (const DeviationRow& row : rows) {
    const bool holds = row.letter == letter && grade >= row.grade_from && grade <= row.grade_to;
    if (holds && nominal > row.over_mm && nominal <= row.up_to_mm) return row.deviation_um;
  }
  return Failure{"the tables have no deviation " + letter + std::to_string(grade) + " for " + brief(nominal) +
                 " mm"};
}

bool lies_below_zero(const std::string& letter) { return letter[0] <= 'h'; }

// Δ of the hole letters K to ZC, which keeps a hole-basis and a shaft-basis fit alike.
Result<double> hole_delta(const ToleranceClass& tolerance, double nominal, const ToleranceTables& tables) {
  const char first = tolerance.letter[0];
  const int last_grade = first <= 'n' ? 8 : 7;
  if (tolerance.grade > last_grade || tolerance.grade < 2 || nominal <= 3) return 0.0;
  const auto width = width_of(tolerance.grade, nominal, tables.tolerances);
  const auto finer = width_of(tolerance.grade - 1, nominal, tables.tolerances);
  if (!width) return width;
  if (!finer) return finer;
  return *width - *finer;
}

// A K hole of IT8 takes the deviation that k has in its finer grades.
int shaft_grade_behind(const ToleranceClass& hole) {
  return hole.letter == "k" && hole.grade == 8 ? 7 : hole.grade;
}

}  // namespace

Result<ToleranceClass> parse_tolerance_class(std::string_view text) {
  return read_whole(text, "tolerance class", [](Reader& reader) -> Result<ToleranceClass> {
    if (auto tolerance = take_class(reader)) return *tolerance;
    return reader.failure("not a tolerance class: H7, g6 and js6 are");
  });
}

Result<FitDesignation> parse_fit(std::string_view text, Input input) {
  return read_whole(text, "fit", [&](Reader& reader) -> Result<FitDesignation> {
    FitDesignation fit;
    reader.take("ø");
    reader.skip_spaces();
    if (reader.at_digit()) {
      auto nominal = reader.take_decimal(input);
      if (!nominal) return nominal.failure();
      fit.nominal = *nominal;
      reader.skip_spaces();
      if (reader.take_word("mm")) reader.skip_spaces();
    }
    auto first = take_class(reader);
    if (!first) return reader.failure("not a fit: 30 H7/g6, H7/g6 and 30 H7 are");
    (first->hole ? fit.hole : fit.shaft) = *first;
    reader.skip_spaces();
    if (!reader.take("/")) return fit;
    reader.skip_spaces();
    auto second = take_class(reader);
    if (!second || second->hole == first->hole)
      return reader.failure("a fit is a hole (capital) over a shaft (small)");
    (second->hole ? fit.hole : fit.shaft) = *second;
    return fit;
  });
}

Result<Limits> limits_of(double nominal_mm, const ToleranceClass& tolerance, const ToleranceTables& tables) {
  if (auto failure = outside_range({{"nominal size", nominal_mm, sizes, "mm"}})) return *failure;
  if (tolerance.letter.empty()) return Failure{"a tolerance class has a letter"};
  const auto width = width_of(tolerance.grade, nominal_mm, tables.tolerances);
  if (!width) return width.failure();
  Limits limits{nominal_mm, -*width / 2, *width / 2};
  if (tolerance.letter == "js") return limits;
  const int grade = tolerance.hole ? shaft_grade_behind(tolerance) : tolerance.grade;
  const auto deviation = deviation_of(tolerance.letter, grade, nominal_mm, tables.deviations);
  if (!deviation) return deviation.failure();
  const bool below = lies_below_zero(tolerance.letter);
  if (!tolerance.hole) {
    limits.upper_um = below ? *deviation : *deviation + *width;
    limits.lower_um = limits.upper_um - *width;
  } else if (below) {
    limits.lower_um = -*deviation;
    limits.upper_um = limits.lower_um + *width;
  } else {
    const auto delta = hole_delta(tolerance, nominal_mm, tables);
    if (!delta) return delta.failure();
    limits.upper_um = -*deviation + *delta;
    limits.lower_um = limits.upper_um - *width;
  }
  return limits;
}

Fit fit_of(const Limits& hole, const Limits& shaft) {
  const double offset = (hole.nominal_mm - shaft.nominal_mm) * 1000;
  Fit fit;
  fit.clearance_um = {offset + hole.lower_um - shaft.upper_um, offset + hole.upper_um - shaft.lower_um};
  if (fit.clearance_um.least >= 0)
    fit.kind = Fit::Kind::clearance;
  else if (fit.clearance_um.most <= 0)
    fit.kind = Fit::Kind::interference;
  else
    fit.kind = Fit::Kind::transition;
  return fit;
}

std::string_view name_of(Fit::Kind kind) {
  switch (kind) {
    case Fit::Kind::clearance:
      return "clearance";
    case Fit::Kind::transition:
      return "transition";
    case Fit::Kind::interference:
      return "interference";
  }
  return "";
}

Inspection inspect(double measured_mm, double uncertainty_mm, const Limits& limits) {
  const Band band = limits.mm();
  if (measured_mm - uncertainty_mm >= band.least && measured_mm + uncertainty_mm <= band.most)
    return Inspection::inside;
  if (measured_mm + uncertainty_mm < band.least || measured_mm - uncertainty_mm > band.most)
    return Inspection::outside;
  return Inspection::cannot_tell;
}

Result<double> formula_tolerance_um(int grade, double over_mm, double up_to_mm) {
  constexpr double units[] = {7, 10, 16, 25, 40, 64, 100};
  if (grade < 5 || grade > 11) return Failure{"the formula is for IT5 to IT11"};
  if (auto failure =
          outside_range({{"range", up_to_mm, sizes, "mm"}, {"range", over_mm, {0, up_to_mm}, "mm"}}))
    return *failure;
  const double mean =
      std::sqrt((over_mm == 0 ? 1 : over_mm) * up_to_mm);  // the first range is over 1 for this
  return units[grade - 5] * (0.45 * std::cbrt(mean) + 0.001 * mean);
}

}  // namespace sheaf
