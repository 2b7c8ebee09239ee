// SPDX-License-Identifier: GPL-2.0-or-later
// The unit table: sizes recomputed from their definitions, and what each spelling means.
#include "query/quantity/unit.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>

#include "tests/query/quantity/rational.h"

using namespace sheaf;
using test::rational;

namespace {

const Unit& unit(std::string_view symbol, Dimension dimension) {
  for (const Unit& candidate : units_of(dimension)) {
    if (candidate.symbol == symbol) return candidate;
  }
  FAIL("no unit " << std::string(symbol));
  return all_units().front();
}

}  // namespace

TEST_CASE("every size follows from the definitions") {
  // The international yard and pound (1959), standard gravity (3rd CGPM, 1901), the gallons of the United
  // States (231 in³) and of the United Kingdom (4.54609 L), conventional mercury (13 595.1 kg/m³).
  const mpq_class one = 1, inch = rational(254, 10000), foot = 12 * inch, mile = 5280 * foot;
  const mpq_class pound = rational(45359237, 100000000), gravity = rational(980665, 100000);
  const mpq_class lbf = pound * gravity, kgf = gravity, litre = rational(1, 1000);
  const mpq_class us_gallon = 231 * inch * inch * inch, imp_gallon = rational(454609, 100000) * litre;
  const mpq_class mercury = rational(135951, 10) * gravity, minute = 60, hour = 3600,
                  year = rational(31556952);

  struct Definition {
    Dimension dimension;
    const char* symbol;
    mpq_class size;
  };
  using enum Dimension;
  // clang-format off
  const std::vector<Definition> definitions{
      {torque, "N·m", one}, {torque, "cN·m", one / 100}, {torque, "daN·m", 10 * one}, {torque, "kN·m", 1000 * one},
      {torque, "lbf·ft", lbf * foot}, {torque, "lbf·in", lbf * inch}, {torque, "ozf·in", lbf / 16 * inch},
      {torque, "kgf·m", kgf}, {torque, "kgf·cm", kgf / 100},
      {distance, "km", 1000 * one}, {distance, "mi", mile},
      {length, "m", one}, {length, "mm", one / 1000}, {length, "cm", one / 100}, {length, "µm", one / 1000000},
      {length, "in", inch}, {length, "thou", inch / 1000}, {length, "ft", foot}, {length, "yd", 3 * foot},
      {length, "km", 1000 * one}, {length, "mi", mile},
      {area, "mm²", one / 1000000}, {area, "cm²", one / 10000}, {area, "in²", inch * inch}, {area, "ft²", foot * foot},
      {volume, "mL", litre / 1000}, {volume, "cc", one / 1000000}, {volume, "L", litre}, {volume, "dL", litre / 10},
      {volume, "cL", litre / 100}, {volume, "in³", inch * inch * inch},
      {volume, "US fl oz", us_gallon / 128}, {volume, "US pt", us_gallon / 8}, {volume, "US qt", us_gallon / 4},
      {volume, "US gal", us_gallon}, {volume, "imp fl oz", imp_gallon / 160}, {volume, "imp pt", imp_gallon / 8},
      {volume, "imp qt", imp_gallon / 4}, {volume, "imp gal", imp_gallon},
      {mass, "g", one / 1000}, {mass, "kg", one}, {mass, "mg", one / 1000000}, {mass, "t", 1000 * one},
      {mass, "oz", pound / 16}, {mass, "lb", pound},
      {force, "N", one}, {force, "kN", 1000 * one}, {force, "daN", 10 * one}, {force, "lbf", lbf},
      {force, "ozf", lbf / 16}, {force, "kgf", kgf}, {force, "kip", 1000 * lbf},
      {pressure, "Pa", one}, {pressure, "kPa", 1000 * one}, {pressure, "MPa", 1000000 * one},
      {pressure, "N/mm²", 1000000 * one}, {pressure, "bar", 100000 * one}, {pressure, "mbar", 100 * one},
      {pressure, "psi", lbf / (inch * inch)}, {pressure, "ksi", 1000 * lbf / (inch * inch)},
      {pressure, "atm", 101325 * one}, {pressure, "kgf/cm²", 10000 * kgf}, {pressure, "mmHg", mercury / 1000},
      {pressure, "inHg", mercury * inch},
      {stress, "MPa", 1000000 * one}, {stress, "N/mm²", 1000000 * one}, {stress, "psi", lbf / (inch * inch)},
      {stress, "ksi", 1000 * lbf / (inch * inch)},
      {temperature, "K", one}, {temperature, "°C", one}, {temperature, "°F", rational(5, 9)},
      {temperature, "°R", rational(5, 9)},
      {temperature_difference, "K", one}, {temperature_difference, "°C", one},
      {temperature_difference, "°F", rational(5, 9)},
      {kinematic_viscosity, "mm²/s", one / 1000000}, {kinematic_viscosity, "cSt", one / 1000000},
      {kinematic_viscosity, "St", one / 10000},
      {dynamic_viscosity, "mPa·s", one / 1000}, {dynamic_viscosity, "cP", one / 1000},
      {dynamic_viscosity, "P", one / 10}, {dynamic_viscosity, "Pa·s", one},
      {saybolt_viscosity, "SUS", one},
      {spring_rate, "N/m", one}, {spring_rate, "N/mm", 1000 * one}, {spring_rate, "kgf/mm", 1000 * kgf},
      {spring_rate, "lbf/in", lbf / inch}, {spring_rate, "lbf/ft", lbf / foot},
      {rotation_speed, "rpm", one / minute},
      {speed, "m/s", one}, {speed, "km/h", 1000 / hour}, {speed, "mph", mile / hour}, {speed, "ft/min", foot / minute},
      {angle, "°", one}, {angle, "turns", 360 * one},
      {clicks, "clicks", one},
      {energy, "J", one}, {energy, "kJ", 1000 * one}, {energy, "ft·lbf", lbf * foot},
      {power, "W", one}, {power, "kW", 1000 * one}, {power, "hp", 550 * foot * lbf}, {power, "PS", 75 * kgf},
      {Dimension::time, "s", one}, {Dimension::time, "min", minute}, {Dimension::time, "h", hour},
      {Dimension::time, "days", 24 * hour}, {Dimension::time, "weeks", 168 * hour},
      {Dimension::time, "months", year / 12}, {Dimension::time, "years", year},
      {Dimension::ratio, "%", one / 100},
      {voltage, "V", one}, {voltage, "mV", one / 1000}, {voltage, "kV", 1000 * one},
      {current, "A", one}, {current, "mA", one / 1000},
      {resistance, "Ω", one}, {resistance, "kΩ", 1000 * one},
      {density, "kg/m³", one}, {density, "g/cm³", 1000 * one},
  };
  // clang-format on
  std::set<const Unit*> defined;
  for (const Definition& definition : definitions) {
    INFO(definition.symbol);
    const Unit& declared = unit(definition.symbol, definition.dimension);
    CHECK(rational(declared.factor) == definition.size);
    CHECK(defined.insert(&declared).second);
  }

  // A degree is 180/π-th of a radian, which no fraction equals; this one is good to 30 digits. π from memory.
  const mpq_class pi =
      mpq_class(mpz_class("3141592653589793238462643383279502884197")) / test::power_of_ten(39);
  const Unit& radian = unit("rad", angle);
  CHECK(abs(rational(radian.factor) * pi / 180 - 1) < test::power_of_ten(-30));
  CHECK_FALSE(radian.exact);
  defined.insert(&radian);

  for (const Unit& declared : all_units()) {
    INFO(std::string(declared.symbol));
    CHECK(defined.count(&declared) == 1);
  }
}

TEST_CASE("only temperatures are shifted, by the ice point and by 459.67 degrees Fahrenheit") {
  for (const Unit& declared : all_units()) {
    INFO(std::string(declared.symbol));
    mpq_class offset = 0;
    if (&declared == &unit("°C", Dimension::temperature)) offset = rational(27315, 100);
    if (&declared == &unit("°F", Dimension::temperature)) offset = rational(45967, 100) * rational(5, 9);
    CHECK(rational(declared.offset) == offset);
  }
}

TEST_CASE("every spelling of a unit reads as that unit") {
  for (const Unit& declared : all_units()) {
    CHECK_FALSE(declared.name.empty());
    CHECK_FALSE(declared.source.empty());
    const auto spellings = spellings_of(declared);
    REQUIRE_FALSE(spellings.empty());
    CHECK(spellings.front() == declared.symbol);
    for (const std::string_view spelling : spellings) {
      INFO(std::string(spelling) << " for " << std::string(declared.symbol));
      const auto read = readings(spelling, declared.dimension);
      CHECK(std::find(read.begin(), read.end(), &declared) != read.end());
    }
  }
}

TEST_CASE("a symbol names its unit alone, in its dimension") {
  for (const Unit& declared : all_units()) {
    INFO(std::string(declared.symbol));
    const auto read = unit_from(declared.symbol, declared.dimension);
    REQUIRE(read);
    CHECK(*read == &declared);
  }
}

TEST_CASE("what is ambiguous is so on purpose, and nothing else is") {
  std::map<std::string, std::set<std::string>> ambiguous;
  for (const Unit& declared : all_units()) {
    for (const std::string_view spelling : spellings_of(declared)) {
      const auto read = readings(spelling);
      if (read.size() < 2) continue;
      auto& symbols = ambiguous[std::string(spelling)];
      for (const Unit* meant : read) symbols.insert(std::string(meant->symbol));
    }
  }
  const std::set<std::string> volume_ounces{"US fl oz", "imp fl oz"}, ounces{"US fl oz", "imp fl oz", "oz"};
  const std::set<std::string> pounds{"lb", "lbf"}, mils{"mm", "thou"};
  const std::set<std::string> pints{"US pt", "imp pt"}, quarts{"US qt", "imp qt"},
      gallons{"US gal", "imp gal"};
  const std::set<std::string> foot_pounds{"lbf·ft", "ft·lbf"}, pounds_per_foot{"lbf·ft", "lbf/ft"};
  const std::map<std::string, std::set<std::string>> expected{
      {"fl oz", volume_ounces},
      {"fluid ounce", volume_ounces},
      {"fluid ounces", volume_ounces},
      {"oz", ounces},
      {"ounce", ounces},
      {"ounces", ounces},
      {"lb", pounds},
      {"lbs", pounds},
      {"pound", pounds},
      {"pounds", pounds},
      {"mil", mils},
      {"pt", pints},
      {"pts", pints},
      {"pint", pints},
      {"pints", pints},
      {"qt", quarts},
      {"qts", quarts},
      {"quart", quarts},
      {"quarts", quarts},
      {"gal", gallons},
      {"gals", gallons},
      {"gallon", gallons},
      {"gallons", gallons},
      {"ft·lbf", foot_pounds},
      {"ft lbf", foot_pounds},
      {"lb/ft", pounds_per_foot},
  };
  CHECK(ambiguous == expected);
}

TEST_CASE("marks join the parts of a unit only where it has parts") {
  CHECK((*unit_from("ft-lb"))->symbol == "lbf·ft");
  CHECK((*unit_from("FT . LBS"))->symbol == "lbf·ft");
  CHECK((*unit_from("ftlb"))->symbol == "lbf·ft");
  CHECK((*unit_from("mm^2"))->symbol == "mm²");
  CHECK((*unit_from("N / mm²"))->symbol == "N/mm²");
  CHECK_FALSE(unit_from("m in"));  // metres and inches, not minutes
  CHECK_FALSE(unit_from("k g"));
  CHECK_FALSE(unit_from("m m"));
}

TEST_CASE("a dimension asked for decides between readings") {
  CHECK((*unit_from("nm", Dimension::torque))->symbol == "N·m");
  CHECK((*unit_from("lb", Dimension::mass))->symbol == "lb");
  CHECK((*unit_from("lb", Dimension::force))->symbol == "lbf");
  CHECK((*unit_from("°C", Dimension::temperature_difference))->dimension ==
        Dimension::temperature_difference);
  CHECK((*unit_from("°C"))->dimension == Dimension::temperature);
  CHECK((*unit_from("psi"))->dimension == Dimension::pressure);
  CHECK((*unit_from("psi", Dimension::stress))->dimension == Dimension::stress);
  CHECK((*unit_from("km"))->dimension == Dimension::distance);
  CHECK((*unit_from("km", Dimension::length))->dimension == Dimension::length);
  CHECK((*unit_from("ft-lb"))->dimension == Dimension::torque);
  CHECK_FALSE(unit_from("ft·lbf"));
  CHECK((*unit_from("ft·lbf", Dimension::energy))->dimension == Dimension::energy);
  CHECK((*unit_from("ft·lbf", Dimension::torque))->dimension == Dimension::torque);
}

TEST_CASE("a prefix that folding would change is refused, not mixed up") {
  for (const char* spelling : {"mPa", "MPa·s", "Mg", "Mbar", "MV", "MA"}) {
    INFO(spelling);
    CHECK_FALSE(unit_from(spelling));
    CHECK(readings(spelling).empty());
  }
  CHECK((*unit_from("Mpa"))->symbol == "MPa");
  CHECK((*unit_from("mpa"))->symbol == "MPa");
  CHECK((*unit_from("mPa·s"))->symbol == "mPa·s");
  CHECK((*unit_from("ML"))->symbol == "mL");
}

TEST_CASE("no spelling, however long or foreign, is more than unknown") {
  CHECK(readings("").empty());
  CHECK(readings(std::string(5000, 'N')).empty());
  CHECK(readings("N·m·x").empty());
  CHECK(readings("\xFF").empty());
  CHECK(readings("lb;").empty());
}
