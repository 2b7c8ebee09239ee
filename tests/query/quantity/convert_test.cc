// SPDX-License-Identifier: GPL-2.0-or-later
// Conversions by example (conversions.txt), scales of tools, and what does not convert.
#include "query/quantity/convert.h"

#include <doctest/doctest.h>

#include "tests/query/quantity/case_file.h"
#include "tests/query/quantity/random_figure.h"
#include "tests/query/quantity/rational.h"

using namespace sheaf;
using test::rational;

namespace {

Figure figure(std::string_view text) {
  auto read = parse_figure(text, std::nullopt, Input::sheet);
  REQUIRE(read);
  return *read;
}

const Unit& unit(std::string_view spelling, std::optional<Dimension> dimension = {}) {
  auto read = unit_from(spelling, dimension);
  REQUIRE(read);
  return **read;
}

}  // namespace

TEST_CASE("conversions by example") {
  for (const test::Case& entry : test::read_cases("conversions.txt")) {
    INFO("conversions.txt:" << entry.line << ": " << entry.input);
    const auto comma = entry.input.rfind(", ");
    const Figure source = figure(entry.input.substr(0, comma));
    const auto converted = convert(source, unit(entry.input.substr(comma + 2), source.unit->dimension));
    REQUIRE(converted);
    CHECK(to_text(converted->figure) + (converted->exact ? " exact" : "") == entry.expected);
  }
}

TEST_CASE("dimensions do not mix") {
  CHECK(convert(figure("35 N·m"), unit("mL")).failure().message == "N·m is a torque, mL is a volume");
  CHECK_FALSE(convert(figure("35 N·m"), unit("J")));
  CHECK_FALSE(convert(figure("5 K"), unit("K", Dimension::temperature_difference)));
  CHECK_FALSE(convert(figure("32 mm²/s"), unit("mPa·s")));
  CHECK_FALSE(convert(figure("32 mm²/s"), unit("SUS")));
  CHECK_FALSE(set_on_scale(figure("35 N·m"), unit("mL"), Number{1, 0, 1}));
}

TEST_CASE("what would not fit is refused") {
  CHECK_FALSE(convert(figure("999999999999999999 kN·m"), unit("ozf·in")));
  CHECK_FALSE(convert(figure("0.000000000000001 µm"), unit("km", Dimension::length)));
}

TEST_CASE("stages convert, their angles stay, the printed pair goes") {
  const auto in = [](const char* text, const char* to) {
    const auto statement = parse_statement(text, std::nullopt, Input::sheet);
    REQUIRE(statement);
    const auto converted = convert(*statement, unit(to));
    return converted ? to_text(converted->statement) : converted.failure().message;
  };
  CHECK(in("20 N·m, 40 N·m, loosen 90°, 25 N·m + 90°, oiled", "lbf·ft") ==
        "14.8 lbf·ft, 29.5 lbf·ft, loosen 90°, 18.4 lbf·ft + 90°, oiled");
  CHECK(in("hand tight + 3/4 turn", "lbf·ft") == "hand tight + 3/4 turn");
  CHECK(in("35 N·m (26 lbf·ft) per leg", "kgf·m") == "3.57 kgf·m per leg");
  CHECK(in("52 mm²/s at 40 °C", "SUS") == "242 SUS at 40 °C");
  CHECK(in("52 mm²/s", "SUS") == "Saybolt seconds depend on the temperature: say it, as in \"at 40 °C\"");
}

TEST_CASE("a bare figure is answered in the workshop's units") {
  const auto symbols = [](const char* spelling) {
    std::string list;
    for (const Unit* useful : useful_units(unit(spelling))) list += std::string(useful->symbol) + " ";
    return list;
  };
  CHECK(symbols("N·m") == "lbf·ft lbf·in kgf·m ");
  CHECK(symbols("bar") == "kPa psi ");
  CHECK(symbols("cSt") == "");  // the same as mm²/s
  CHECK(symbols("°F") == "°C ");
}

TEST_CASE("the value to set is the step in the band nearest to the nominal") {
  struct Example {
    const char* figure;
    const char* unit;
    const char* step;
    const char* value;
    bool inside, stated;
  };
  const Example examples[] = {
      {"28 ± 3 N·m", "lbf·ft", "1", "21", true, true},
      {"28 ± 3 N·m", "lbf·ft", "0.5", "20.5", true, true},
      {"28 +0 -3 N·m", "lbf·ft", "1", "20", true, true},     // 21 is nearer, and beyond the most
      {"25..31 N·m", "lbf·ft", "1", "21", true, true},       // the middle of the band
      {"35.0 ± 0.1 N·m", "lbf·ft", "1", "26", false, true},  // 25.74 to 25.89 holds no whole step
      {"35.0 ± 0.5 N·m", "lbf·ft", "0.5", "26.0", true, true},
      {"35 N·m", "lbf·ft", "1", "26", true, false},
      {"25 N·m", "lbf·ft", "1", "18", false, false},
      {"min 20 N·m", "lbf·ft", "1", "15", true, true},
      {"max 20 N·m", "lbf·ft", "1", "14", true, true},
      {"5/16 in", "mm", "0.1", "7.9", false, false},
      {"1/2 turn", "°", "15", "180", true, false},
      {"28 ± 3 N·m", "N·m", "1/4", "112/4", true, true},
      {"1 N·m", "lbf·ft", "5", "0", false, false},
  };
  for (const Example& example : examples) {
    INFO(std::string(example.figure) << " on a scale of " << std::string(example.step) << " "
                                     << std::string(example.unit));
    const auto setting =
        set_on_scale(figure(example.figure), unit(example.unit), *parse_number(example.step, Input::sheet));
    REQUIRE(setting);
    CHECK(to_text(setting->value) == example.value);
    CHECK(setting->inside == example.inside);
    CHECK(setting->stated == example.stated);
  }
  CHECK_FALSE(set_on_scale(figure("28 N·m"), unit("lbf·ft"), Number{0, 0, 1}));
  CHECK_FALSE(set_on_scale(figure("28 N·m"), unit("lbf·ft"), Number{-1, 0, 1}));
}

TEST_CASE("no setting leaves its band, and none inside is nearer, by exact arithmetic") {
  test::RandomFigures random(8);
  for (int i = 0; i < 100'000; ++i) {
    const Figure source = random.figure();
    if (!source.least && !source.most) continue;
    const Unit& to = random.other_unit(*source.unit);
    const Number step{1 + random.below(50), static_cast<std::uint8_t>(random.below(3)), 1};
    const auto setting = set_on_scale(source, to, step);
    if (!setting) continue;
    INFO(to_text(source) << " by " << to_text(step) << " " << to.symbol << ": " << to_text(setting->value));
    const auto exact_of = [&](const Number& number) {
      return test::converted(rational(number), *source.unit, to);
    };
    const mpq_class value = rational(setting->value), size = rational(step);
    CHECK(mpq_class(value / size).get_den() == 1);
    const auto fits = [&](const mpq_class& candidate) {
      return (!source.least || candidate >= exact_of(*source.least)) &&
             (!source.most || candidate <= exact_of(*source.most));
    };
    CHECK(setting->inside == fits(value));
    if (!source.nominal) continue;
    const mpq_class nominal = exact_of(*source.nominal), distance = abs(value - nominal);
    for (const mpq_class& neighbour : {mpq_class(value - size), mpq_class(value + size)}) {
      if (fits(neighbour) == setting->inside) CHECK(abs(neighbour - nominal) >= distance);
      if (!setting->inside) CHECK_FALSE(fits(neighbour));
    }
  }
}
