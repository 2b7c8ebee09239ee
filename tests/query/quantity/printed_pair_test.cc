// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/printed_pair.h"

#include <doctest/doctest.h>

#include "query/quantity/convert.h"
#include "tests/query/quantity/random_figure.h"
#include "tests/query/quantity/rational.h"

using namespace sheaf;
using test::rational;

namespace {

PairVerdict verdict(std::string_view primary, std::string_view printed) {
  const auto left = parse_figure(primary, std::nullopt, Input::sheet),
             right = parse_figure(printed, std::nullopt, Input::sheet);
  REQUIRE(left);
  REQUIRE(right);
  return compare_printed(*left, *right);
}

}  // namespace

TEST_CASE("a pair agrees when the rounding of its digits allows it") {
  struct Pair {
    const char *primary, *printed;
  };
  for (const Pair& pair : std::initializer_list<Pair>{{"35 N·m", "26 lbf·ft"},
                                                      {"35 N·m", "25.8 lbf·ft"},
                                                      {"35 N·m", "25 lbf·ft"},  // 34.5 N·m is 25.4
                                                      {"22 N·m", "16 lbf·ft"},
                                                      {"25..31 N·m", "18..23 lbf·ft"},
                                                      {"28 ± 3 N·m", "20.7 ± 2.2 lbf·ft"},
                                                      {"28 ± 3 N·m", "21 lbf·ft"},
                                                      {"25..31 N·m", "20 lbf·ft"},
                                                      {"28 (25..31) N·m", "18..23 lbf·ft"},
                                                      {"max 0.2 mm", "max 0.008 in"},
                                                      {"min 2.0 mm", "min 0.079 in"},
                                                      {"5/16 in", "8 mm"},
                                                      {"1-1/2 in", "38 mm"},
                                                      {"50 °C", "122 °F"},
                                                      {"about 1 L", "2 US pt"},
                                                      {"2.3 bar", "33 psi"},
                                                      {"0 °C", "32 °F"}}) {
    INFO(std::string(pair.primary) << " and " << std::string(pair.printed));
    const PairVerdict found = verdict(pair.primary, pair.printed);
    CHECK(found.agrees);
    CHECK(found.slip == Slip::none);
    CHECK(found.message.empty());
  }
}

TEST_CASE("a pair that cannot be true is explained by the slip behind it") {
  struct Pair {
    const char *primary, *printed;
    Slip slip;
  };
  for (const Pair& pair : std::initializer_list<Pair>{{"22 N·m", "22 lbf·ft", Slip::not_converted},
                                                      {"25..31 N·m", "25..31 lbf·ft", Slip::not_converted},
                                                      {"22 N·m", "162 lbf·ft", Slip::factor_10},
                                                      {"22 N·m", "1.6 lbf·ft", Slip::factor_10},
                                                      {"22 N·m", "195 lbf·ft", Slip::factor_12},
                                                      {"84 lbf·ft", "9.5 N·m", Slip::factor_12},
                                                      {"2.24 kgf·m", "21.97 lbf·ft", Slip::factor_1_356},
                                                      {"16.2 lbf·ft", "22 kgf·m", Slip::factor_9_81},
                                                      {"35 N·m", "28.5 lbf·ft", Slip::swapped_digits},
                                                      {"53 N·m", "25.8 lbf·ft", Slip::swapped_digits},
                                                      {"35 N·m", "47 lbf·ft", Slip::wrong_way},
                                                      {"520 mL", "0.52 US fl oz", Slip::other_unit},
                                                      {"35 N·m", "99 lbf·ft", Slip::unexplained}}) {
    INFO(std::string(pair.primary) << " and " << std::string(pair.printed));
    const PairVerdict found = verdict(pair.primary, pair.printed);
    CHECK_FALSE(found.agrees);
    CHECK(static_cast<int>(found.slip) == static_cast<int>(pair.slip));
    CHECK_FALSE(found.message.empty());
  }
  CHECK(verdict("35 N·m", "35 lbf·ft").message ==
        "35 N·m is 25.8 lbf·ft, not 35 lbf·ft: the same number was printed in both units");
  CHECK(verdict("520 mL", "0.52 US fl oz").message ==
        "520 mL is 17.58 US fl oz, not 0.52 US fl oz: the printed number is right in L");
  CHECK_FALSE(verdict("35 N·m", "26 J").agrees);
}

TEST_CASE("a printed bound may be rounded inward by less than one of its digits, and no more") {
  CHECK(verdict("max 20.00 N·m", "max 14.8 lbf·ft").agrees);  // 14.751
  CHECK(verdict("max 20.00 N·m", "max 14.7 lbf·ft").agrees);
  CHECK_FALSE(verdict("max 20.00 N·m", "max 14.6 lbf·ft").agrees);
  CHECK_FALSE(verdict("max 20.00 N·m", "max 14.9 lbf·ft").agrees);
  CHECK(verdict("min 20.00 N·m", "min 14.8 lbf·ft").agrees);
  CHECK_FALSE(verdict("min 20.00 N·m", "min 14.9 lbf·ft").agrees);
  CHECK_FALSE(verdict("min 20.00 N·m", "min 14.6 lbf·ft").agrees);
}

TEST_CASE("the verdict on random pairs is that of exact intervals") {
  test::RandomFigures random(9);
  int agreed = 0;
  for (int i = 0; i < 100'000; ++i) {
    const Unit& from = random.unit();
    const Unit& to = random.other_unit(from);
    if (&from == &to) continue;
    Number left = random.number(4), right = random.number(4);
    left.denominator = right.denominator = 1;
    // Half of the pairs are near each other, where the verdict is hard.
    if (const auto near = convert_to_places({left, &from}, to, random.below(4));
        near && random.below(2) == 0) {
      right = *near;
      right.digits += random.below(5) - 2;
    }
    const mpq_class half_left = test::power_of_ten(-left.places) / 2,
                    half_right = test::power_of_ten(-right.places) / 2;
    const mpq_class low = test::converted(rational(left) - half_left, from, to);
    const mpq_class high = test::converted(rational(left) + half_left, from, to);
    const bool agrees = low <= rational(right) + half_right && rational(right) - half_right <= high;
    agreed += agrees ? 1 : 0;
    INFO(to_text(Quantity{left, &from}) << " and " << to_text(Quantity{right, &to}));
    CHECK(compare_printed({Form::nominal, left, {}, {}, {}, &from}, {Form::nominal, right, {}, {}, {}, &to})
              .agrees == agrees);
  }
  CHECK(agreed > 10'000);
}

TEST_CASE("a converted figure agrees with the one it came from") {
  test::RandomFigures random(10);
  for (int i = 0; i < 100'000; ++i) {
    const Figure source = random.figure();
    const auto converted = convert(source, random.other_unit(*source.unit));
    if (!converted) continue;
    INFO(to_text(source) << " and " << to_text(converted->figure));
    CHECK(compare_printed(source, converted->figure).agrees);
  }
}
