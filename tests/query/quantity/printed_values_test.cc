// SPDX-License-Identifier: GPL-2.0-or-later
// Our conversions against what is printed: the factors of NIST SP 811 and worked conversions of handbooks.
#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

#include "query/quantity/convert.h"
#include "query/quantity/printed_pair.h"
#include "tests/query/quantity/rational.h"

using namespace sheaf;
using test::rational;

namespace {

std::vector<std::vector<std::string>> rows_of(const std::string& name) {
  std::ifstream file("tests/outside/" + name);
  std::vector<std::vector<std::string>> rows;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    std::stringstream stream(line);
    auto& row = rows.emplace_back();
    for (std::string field; std::getline(stream, field, ',');) row.push_back(field);
  }
  REQUIRE(rows.size() > 1);
  rows.erase(rows.begin());  // the names of the columns
  return rows;
}

const Unit& declared(const std::string& dimension, const std::string& symbol) {
  for (const Unit& unit : all_units()) {
    if (unit.symbol == symbol && name_of(unit.dimension) == dimension) return unit;
  }
  FAIL("no unit " << symbol);
  return all_units().front();
}

// A printed decimal, with or without a power of ten, and half of its last digit.
struct Printed {
  mpq_class value, half_digit;
};

Printed printed(const std::string& text) {
  const auto e = text.find('e');
  const std::string mantissa = text.substr(0, e);
  const int exponent = e == std::string::npos ? 0 : std::stoi(text.substr(e + 1));
  const Number number = *parse_number(mantissa, Input::sheet);
  return {rational(number) * test::power_of_ten(exponent), test::power_of_ten(exponent - number.places) / 2};
}

// In the SI unit of the book: angles are per radian there.
mpq_class factor_of(const Unit& unit) {
  const mpq_class pi =
      mpq_class(mpz_class("3141592653589793238462643383279502884197")) / test::power_of_ten(39);
  if (unit.dimension == Dimension::angle) return rational(unit.factor) * pi / 180;
  if (unit.dimension == Dimension::rotation_speed) return rational(unit.factor) * 2 * pi;
  return rational(unit.factor);
}

}  // namespace

TEST_CASE("our factors round to those that NIST SP 811 prints") {
  int compared = 0;
  for (const auto& row : rows_of("nist_sp811.csv")) {
    INFO(row[0] << " " << row[1] << " " << row[2]);
    const Printed book = printed(row[2]);
    CHECK(abs(factor_of(declared(row[0], row[1])) - book.value) <= book.half_digit);
    ++compared;
  }
  CHECK(compared >= 45);
}

TEST_CASE("worked conversions of handbooks come out as printed") {
  int compared = 0;
  for (const auto& row : rows_of("worked_conversions.csv")) {
    INFO(row[0] << ": " << row[1] << " is " << row[2]);
    const auto source = parse_figure(row[1], std::nullopt, Input::sheet);
    REQUIRE(source);
    const auto answer = parse_figure(row[2], source->unit->dimension, Input::sheet);
    REQUIRE(answer);
    const mpq_class exact = test::converted(rational(*source->nominal), *source->unit, *answer->unit);
    const mpq_class digit = test::power_of_ten(-answer->nominal->places);
    const int slack = std::stoi(row[3]);
    CHECK(abs(exact - rational(*answer->nominal)) <= digit / 2 + slack * digit);
    if (slack == 0) {
      CHECK(convert_to_places({*source->nominal, source->unit}, *answer->unit, answer->nominal->places) ==
            *answer->nominal);
    }
    CHECK(compare_printed(*source, *answer).agrees);
    ++compared;
  }
  CHECK(compared >= 25);
}
