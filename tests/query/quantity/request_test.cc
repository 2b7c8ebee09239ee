// SPDX-License-Identifier: GPL-2.0-or-later
// Lines typed at `sheaf convert` (requests.txt), tables and scales.
#include "query/quantity/request.h"

#include <doctest/doctest.h>

#include "tests/query/quantity/case_file.h"
#include "tests/query/quantity/random_figure.h"

using namespace sheaf;

namespace {

std::string answer(std::string_view text) {
  const auto readings = answer_request({text, {}, {}});
  if (!readings) return "! " + readings.failure().message;
  std::string all;
  for (const Reading& reading : *readings) {
    all += (all.empty() ? "" : " | ") + to_text(reading.source) + " =";
    for (const DerivedFigure& derived : reading.derived) {
      all += (&derived == &reading.derived.front() ? " " : ", ") + to_text(derived.statement);
    }
  }
  return all;
}

std::string table(std::string_view text, std::string_view every) {
  const auto found = answer_table(text, *parse_number(every, Input::prompt));
  if (!found) return "! " + found.failure().message;
  std::string rows;
  for (const TableRow& row : found->rows) {
    rows += (rows.empty() ? "" : "; ") + to_text(row.source) + " " + to_text(row.derived);
  }
  return rows;
}

}  // namespace

TEST_CASE("requests by example") {
  for (const test::Case& entry : test::read_cases("requests.txt")) {
    INFO("requests.txt:" << entry.line);
    CHECK(answer(entry.input) == entry.expected);
  }
}

TEST_CASE("a scale gives the value to set beside the conversion") {
  const auto readings = answer_request({"28±3 Nm lbf ft", Number{1, 0, 1}, {}});
  REQUIRE(readings);
  const auto& setting = readings->front().derived.front().setting;
  REQUIRE(setting);
  CHECK(setting->value == Number{21, 0, 1});
  CHECK(setting->inside);
}

TEST_CASE("what is derived says how, where it is not a plain factor") {
  const auto readings = answer_request({"52 cSt sus", {}, {}});
  REQUIRE(readings);
  CHECK(readings->front().derived.front().basis == "by ASTM D2161 at 100 °F; no temperature was given");
}

TEST_CASE("a table has aligned columns and stays in its range") {
  CHECK(table("10..30 N·m lbf·ft", "5") ==
        "10 N·m 7.4 lbf·ft; 15 N·m 11.1 lbf·ft; 20 N·m 14.8 lbf·ft; 25 N·m 18.4 lbf·ft; 30 N·m 22.1 lbf·ft");
  CHECK(table("10..12 mm to in", "0.5") ==
        "10.0 mm 0.394 in; 10.5 mm 0.413 in; 11.0 mm 0.433 in; 11.5 mm 0.453 in; 12.0 mm 0.472 in");
  CHECK(table("1/16..1/4 in mm", "1/16") ==
        "1/16 in 1.59 mm; 1/8 in 3.18 mm; 3/16 in 4.76 mm; 1/4 in 6.35 mm");
  CHECK(table("10..24 N·m lbf·ft", "7") == "10 N·m 7.4 lbf·ft; 17 N·m 12.5 lbf·ft; 24 N·m 17.7 lbf·ft");
  CHECK(table("-20..20 °C °F", "20") == "-20 °C -4 °F; 0 °C 32 °F; 20 °C 68 °F");
  CHECK(table("10..60 N·m", "5") ==
        "! a table is made of one range and one unit, as in \"10..60 N·m lbf·ft\"");
  CHECK(table("10 N·m lbf·ft", "5") == "! a table needs a range, as in 10..60 N·m");
  CHECK(table("10..60 N·m lbf·ft", "0") == "! the step of a table is more than nothing");
  CHECK(table("0..100000 N·m lbf·ft", "1") == "! the table would have more than 10000 rows");
  CHECK(table("10..20 gal L", "5") ==
        "! a table is made of one range and one unit, as in \"10..60 N·m lbf·ft\"");
  CHECK(table("10..60 N·m mL", "5").substr(0, 2) == "! ");
}

TEST_CASE("no line, however odd, is more than a failure") {
  CHECK_FALSE(answer_request({"", {}, {}}));
  CHECK_FALSE(answer_request({"   ", {}, {}}));
  CHECK_FALSE(answer_request({"to", {}, {}}));
  CHECK_FALSE(answer_request({" to mm", {}, {}}));
  CHECK_FALSE(answer_request({"in in in in in", {}, {}}));
  CHECK_FALSE(answer_request({std::string(1001, '1'), {}, {}}));
  CHECK_FALSE(answer_request({"35 N·m to \xFF", {}, {}}));
}

TEST_CASE("what is shown can be typed back with any unit asked for") {
  test::RandomFigures random(11);
  for (int i = 0; i < 20'000; ++i) {
    const Figure figure = random.figure();
    const Unit& unit = random.other_unit(*figure.unit);
    const auto converted = convert(figure, unit);
    if (!converted || &unit == figure.unit) continue;
    const std::string text = shown(figure) + " to " + std::string(unit.symbol);
    INFO(text);
    const auto readings = answer_request({text, {}, figure.unit->dimension});
    REQUIRE(readings);
    bool found = false;
    for (const Reading& reading : *readings) {
      for (const DerivedFigure& derived : reading.derived) {
        found = found || to_text(derived.statement) == to_text(converted->figure);
      }
    }
    CHECK(found);
  }
}
