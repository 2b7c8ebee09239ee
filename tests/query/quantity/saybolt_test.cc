// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/saybolt.h"

#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <sstream>

using namespace sheaf;

namespace {

std::vector<std::string> fields(const std::string& line) {
  std::vector<std::string> found;
  std::stringstream stream(line);
  for (std::string field; std::getline(stream, field, ',');) found.push_back(field);
  return found;
}

double celsius(double fahrenheit) { return (fahrenheit - 32) / 1.8; }

Figure figure(std::string_view text) {
  auto read = parse_figure(text, std::nullopt, Input::sheet);
  REQUIRE(read);
  return *read;
}

const Unit& sus() { return **unit_from("SUS"); }
const Quantity at_40{{40, 0, 1}, *unit_from("°C")};

}  // namespace

TEST_CASE("Saybolt seconds agree with what is printed of them") {
  std::ifstream file("tests/outside/saybolt.csv");
  int rows = 0;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#' || line.rfind("kind", 0) == 0) continue;
    INFO(line);
    const auto row = fields(line);
    REQUIRE(row.size() >= 5);
    const double viscosity = std::stod(row[1]), seconds = std::stod(row[3]), tolerance = std::stod(row[4]);
    CHECK(std::abs(saybolt_seconds(viscosity, celsius(std::stod(row[2]))) / seconds - 1) < tolerance);
    ++rows;
  }
  CHECK(rows >= 25);
}

TEST_CASE("the way back from Saybolt seconds finds the viscosity") {
  for (double viscosity = least_saybolt_viscosity; viscosity < 1e5; viscosity *= 1.1) {
    for (const double temperature : {-20.0, celsius(100), 40.0, 100.0}) {
      INFO(viscosity << " at " << temperature);
      const double seconds = saybolt_seconds(viscosity, temperature);
      CHECK(viscosity_of_saybolt(seconds, temperature) == doctest::Approx(viscosity).epsilon(1e-9));
      CHECK(saybolt_seconds(viscosity * 1.01, temperature) > seconds);
    }
  }
}

TEST_CASE("figures convert to Saybolt seconds and back, bounds inward") {
  const auto there = convert_saybolt(figure("46 mm²/s"), sus(), at_40);
  REQUIRE(there);
  CHECK(to_text(there->figure) == "214 SUS");
  const auto back = convert_saybolt(figure("214 SUS"), **unit_from("mm²/s"), at_40);
  REQUIRE(back);
  CHECK(to_text(back->figure) == "45.9 mm²/s");

  const auto band = convert_saybolt(figure("41.4..50.6 mm²/s"), sus(), at_40);
  REQUIRE(band);
  CHECK(approximate(*band->figure.least) >= saybolt_seconds(41.4, 40));
  CHECK(approximate(*band->figure.most) <= saybolt_seconds(50.6, 40));
  CHECK(to_text(band->figure) == "193.2..235.3 SUS");
  CHECK(to_text(convert_saybolt(figure("0.46 St"), sus(), at_40)->figure) == "214 SUS");
}

TEST_CASE("no Saybolt seconds where the standard has none") {
  CHECK_FALSE(convert_saybolt(figure("1.5 mm²/s"), sus(), at_40));
  CHECK_FALSE(convert_saybolt(figure("20 SUS"), **unit_from("mm²/s"), at_40));
  CHECK_FALSE(convert_saybolt(figure("0 mm²/s"), sus(), at_40));
  CHECK_FALSE(convert_saybolt(figure("99999999 mm²/s"), sus(), at_40));
  CHECK_FALSE(convert_saybolt(figure("999999999999999999 SUS"), **unit_from("mm²/s"), at_40));
  CHECK_FALSE(convert_saybolt(figure("46 mm²/s"), sus(), Quantity{{5, 0, 1}, *unit_from("mm")}));
  CHECK_FALSE(convert_saybolt(figure("46 mm²/s"), sus(), Quantity{{999, 0, 1}, *unit_from("°C")}));
}
