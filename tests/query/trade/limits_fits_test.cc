// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/limits_fits.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "tests/outside/table.h"

using namespace sheaf;

namespace {

struct Shelf {
  std::vector<ToleranceRow> tolerances;
  std::vector<DeviationRow> deviations;
  ToleranceTables tables() const { return {tolerances, deviations}; }
};

const Shelf& shelf() {
  static const Shelf whole = [] {
    Shelf read;
    for (const auto& row : outside::sheet("iso-tolerance-grades")) {
      read.tolerances.push_back({static_cast<int>(outside::number(row, "grade")),
                                 outside::number(row, "over"), outside::number(row, "up-to"),
                                 outside::number(row, "width")});
    }
    for (const auto& row : outside::sheet("iso-shaft-deviations")) {
      read.deviations.push_back(
          {outside::text(row, "letter"), static_cast<int>(outside::number(row, "grade-from")),
           static_cast<int>(outside::number(row, "grade-to")), outside::number(row, "over"),
           outside::number(row, "up-to"), outside::number(row, "deviation")});
    }
    return read;
  }();
  return whole;
}

Limits limits(double nominal, std::string_view name) {
  auto result = limits_of(nominal, *parse_tolerance_class(name), shelf().tables());
  REQUIRE_MESSAGE(result, name);
  return *result;
}

}  // namespace

TEST_CASE("classes and fits read, and their case tells hole from shaft") {
  CHECK(parse_tolerance_class("H7")->hole);
  CHECK_FALSE(parse_tolerance_class("h7")->hole);
  CHECK(parse_tolerance_class("js6")->letter == "js");
  CHECK(parse_tolerance_class("JS6")->hole);
  for (std::string_view text : {"", "7", "H", "H0", "H19", "Hh7", "H7/g6", "28 N·m", "H7x"})
    CHECK_FALSE(parse_tolerance_class(text));
  const auto fit = parse_fit("30 H7/g6", Input::prompt);
  REQUIRE(fit);
  CHECK(approximate(*fit->nominal) == 30);
  CHECK(fit->hole->letter == "h");
  CHECK(fit->shaft->letter == "g");
  CHECK(parse_fit("30H7", Input::prompt)->hole->grade == 7);
  CHECK(parse_fit("ø30 mm g6", Input::prompt)->shaft->grade == 6);
  CHECK(parse_fit("H7/g6", Input::prompt)->shaft);
  for (std::string_view text : {"", "30", "30 H7/H6", "30 g6/f7", "30 H7/", "H7 g6"})
    CHECK_FALSE(parse_fit(text, Input::prompt));
}

TEST_CASE("30 H7/g6 is the fit that every handbook prints") {
  // ISO 286-2:2010: 30 H7 +21/0, 30 g6 −7/−20: clearance 7 to 41 µm.
  const Limits hole = limits(30, "H7"), shaft = limits(30, "g6");
  CHECK(hole.upper_um == 21);
  CHECK(hole.lower_um == 0);
  CHECK(shaft.upper_um == -7);
  CHECK(shaft.lower_um == -20);
  const Fit fit = fit_of(hole, shaft);
  CHECK(fit.kind == Fit::Kind::clearance);
  CHECK(fit.clearance_um.least == 7);
  CHECK(fit.clearance_um.most == 41);
  CHECK(fit_of(hole, limits(30, "p6")).kind == Fit::Kind::interference);
  CHECK(fit_of(hole, limits(30, "k6")).kind == Fit::Kind::transition);
}

TEST_CASE("holes beyond the table's shafts follow the standard's rule") {
  // Printed in ISO 286-2 (from memory): 30 K7 +6/−15, 30 N7 is not on the shelf, 30 P7 −14/−35, 30 M7 0/−21,
  // 30 F8 +53/+20, 30 JS7 ±10.5, 50 K6 +3/−13.
  CHECK(limits(30, "K7").upper_um == 6);
  CHECK(limits(30, "K7").lower_um == -15);
  CHECK(limits(30, "P7").upper_um == -14);
  CHECK(limits(30, "P7").lower_um == -35);
  CHECK(limits(30, "M7").upper_um == 0);
  CHECK(limits(30, "F8").lower_um == 20);
  CHECK(limits(30, "F8").upper_um == 53);
  CHECK(limits(30, "JS7").upper_um == 10.5);
  CHECK(limits(50, "K6").upper_um == 3);
}

TEST_CASE("a range's upper end belongs to it, its lower end does not") {
  CHECK(limits(30, "h7").lower_um == -21);
  CHECK(limits(30.001, "h7").lower_um == -25);
  CHECK(limits(18, "h7").lower_um == -18);
}

TEST_CASE("every width of the shelf is near the standard's formula") {
  REQUIRE(shelf().tolerances.size() >= 50);
  for (const ToleranceRow& row : shelf().tolerances) {
    CAPTURE(row.grade);
    CAPTURE(row.up_to_mm);
    const auto formula = formula_tolerance_um(row.grade, row.over_mm, row.up_to_mm);
    REQUIRE(formula);
    const double share = row.over_mm == 0 ? 0.16 : 0.1;
    CHECK(std::abs(row.width_um - *formula) <= std::max(0.8, share * *formula));
  }
}

TEST_CASE("every deviation of the shelf is near the standard's formula") {
  // ISO 286-1, deviations in µm for D the geometric mean of the range: d 16 D^0.44, e 11 D^0.41, f 5.5
  // D^0.41, g 2.5 D^0.34, k 0.6 ∛D, n 5 D^0.34; m is IT7 − IT6. p and s have no one formula.
  struct {
    std::string_view letter;
    double factor, power;
  } formulas[] = {{"d", -16, 0.44},  {"e", -11, 0.41},    {"f", -5.5, 0.41},
                  {"g", -2.5, 0.34}, {"k", 0.6, 1.0 / 3}, {"n", 5, 0.34}};
  for (const DeviationRow& row : shelf().deviations) {
    const double mean = std::sqrt((row.over_mm == 0 ? 1 : row.over_mm) * row.up_to_mm);
    CAPTURE(row.letter);
    CAPTURE(row.up_to_mm);
    for (const auto& formula : formulas) {
      if (row.letter != formula.letter) continue;
      const double expected = formula.factor * std::pow(mean, formula.power);
      CHECK(std::abs(row.deviation_um - expected) <= std::max(2.1, 0.06 * std::abs(expected)));
    }
    if (row.letter == "m" && row.over_mm > 0) {
      const double middle = (row.over_mm + row.up_to_mm) / 2;
      CHECK(row.deviation_um == limits(middle, "h6").lower_um - limits(middle, "h7").lower_um);
    }
  }
}

TEST_CASE("a measurement near a limit cannot tell") {
  const Limits shaft = limits(30, "g6");  // 29.980 to 29.993
  CHECK(inspect(29.986, 0.003, shaft) == Inspection::inside);
  CHECK(inspect(29.992, 0.003, shaft) == Inspection::cannot_tell);
  CHECK(inspect(30.000, 0.003, shaft) == Inspection::outside);
  CHECK(inspect(29.986, 0.1, shaft) == Inspection::cannot_tell);
  CHECK(inspect(std::nan(""), 0.1, shaft) == Inspection::cannot_tell);
}

TEST_CASE("what the shelf does not have is said, not guessed") {
  CHECK_FALSE(limits_of(30, *parse_tolerance_class("zc6"), shelf().tables()));
  CHECK_FALSE(limits_of(30, *parse_tolerance_class("H1"), shelf().tables()));
  CHECK_FALSE(limits_of(400, *parse_tolerance_class("H7"), {}));
  CHECK_FALSE(limits_of(-30, *parse_tolerance_class("H7"), shelf().tables()));
  CHECK_FALSE(formula_tolerance_um(4, 0, 3));
  CHECK_FALSE(formula_tolerance_um(7, 3, 1000));
}
