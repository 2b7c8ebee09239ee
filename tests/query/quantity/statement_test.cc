// SPDX-License-Identifier: GPL-2.0-or-later
// Statements as they are typed: what reads (statements.txt) and what is refused (refusals.txt).
#include <doctest/doctest.h>

#include <limits>

#include "query/quantity/figure.h"
#include "tests/query/quantity/case_file.h"

using namespace sheaf;

TEST_CASE("a statement is written in its canonical form and reads back to an equal one") {
  for (const test::Case& entry : test::read_cases("statements.txt")) {
    INFO("statements.txt:" << entry.line << ": " << entry.input);
    const test::Typed typed = test::typed(entry.input);
    const auto statement = parse_statement(typed.text, typed.dimension, typed.input);
    if (!statement) FAIL_CHECK(statement.failure().message);
    if (!statement) continue;
    CHECK(to_text(*statement) == entry.expected);
    for (const std::string& again : {to_text(*statement), shown(*statement)}) {
      INFO("reading back " << again);
      const auto second = parse_statement(again, typed.dimension, Input::sheet);
      if (!second) FAIL_CHECK(second.failure().message);
      if (second) CHECK(*second == *statement);
    }
  }
}

namespace {

// Takes the marks ‹ › out of a text and says which bytes stood between them.
struct Marked {
  std::string text;
  int at = 0, length = 0;
};

Marked unmarked(std::string text) {
  const std::string open = "‹", close = "›";
  const auto begin = text.find(open);
  if (begin == std::string::npos) return {text, 0, 0};
  text.erase(begin, open.size());
  const auto end = text.find(close);
  REQUIRE(end != std::string::npos);
  text.erase(end, close.size());
  return {text, static_cast<int>(begin), static_cast<int>(end - begin)};
}

}  // namespace

TEST_CASE("what cannot be right is refused in words, at its place") {
  for (const test::Case& entry : test::read_cases("refusals.txt")) {
    INFO("refusals.txt:" << entry.line << ": " << entry.input);
    const test::Typed typed = test::typed(entry.input);
    const Marked marked = unmarked(typed.text);
    const auto statement = parse_statement(marked.text, typed.dimension, typed.input);
    if (statement) FAIL_CHECK("read as " << to_text(*statement));
    if (statement) continue;
    CHECK(statement.failure().message == entry.expected);
    CHECK(statement.failure().at == marked.at);
    CHECK(statement.failure().length == marked.length);
  }
}

TEST_CASE("a statement keeps what was said apart") {
  const auto level =
      parse_statement("118 mm below the rim, spring out, fork compressed", Dimension::length, Input::sheet);
  REQUIRE(level);
  CHECK(level->conditions == std::vector<std::string>{"below the rim", "spring out", "fork compressed"});
  CHECK(level->figure().nominal == Number{118, 0, 1});

  const auto oil = parse_statement("512 mL per leg at 20 °C", Dimension::volume, Input::sheet);
  REQUIRE(oil);
  CHECK(oil->per == "leg");
  REQUIRE(oil->at);
  CHECK(oil->at->value == Number{20, 0, 1});
  CHECK(oil->at->unit->symbol == "°C");

  const auto stages =
      parse_statement("40 N·m, loosen fully, hand tight + 90°", Dimension::torque, Input::sheet);
  REQUIRE(stages);
  REQUIRE(stages->stages.size() == 4);
  CHECK(stages->stages[1].act == Act::loosen_fully);
  CHECK(stages->stages[2].hand_tight);
  CHECK(stages->conditions.empty());

  const auto angle = parse_statement("20 N·m + 90°", Dimension::torque, Input::sheet);
  REQUIRE(angle);
  REQUIRE(angle->stages.size() == 2);
  CHECK(angle->stages[1].act == Act::turn_further);
  CHECK(angle->stages[1].figure.unit->dimension == Dimension::angle);
}

TEST_CASE("the band is worked out exactly from the tolerance as written") {
  struct Band {
    const char* text;
    Number least, most;
  };
  const Band bands[] = {
      {"28 ± 3 N·m", {25, 0, 1}, {31, 0, 1}},
      {"28.0 ± 3 N·m", {250, 1, 1}, {310, 1, 1}},
      {"28 N·m ± 5 %", {266, 1, 1}, {294, 1, 1}},
      {"20 N·m ± 5 %", {19, 0, 1}, {21, 0, 1}},
      {"28 +4 -1 N·m", {27, 0, 1}, {32, 0, 1}},
      {"25..31 N·m", {25, 0, 1}, {31, 0, 1}},
      {"12.00 +0.05 -0.1 mm", {1190, 2, 1}, {1205, 2, 1}},
      {"1/2 ± 1/16 in", {7, 0, 16}, {9, 0, 16}},
      {"-10 °C ± 10 %", {-11, 0, 1}, {-9, 0, 1}},
  };
  for (const Band& band : bands) {
    INFO(band.text);
    const auto figure = parse_figure(band.text, std::nullopt, Input::sheet);
    REQUIRE(figure);
    CHECK(figure->least == band.least);
    CHECK(figure->most == band.most);
  }
}

TEST_CASE("an ambiguous unit is read every way at a prompt") {
  const auto readings = parse_readings("17.5 oz", std::nullopt);
  REQUIRE(readings);
  REQUIRE(readings->size() == 3);
  CHECK(to_text((*readings)[0]) == "17.5 US fl oz");
  CHECK(to_text((*readings)[1]) == "17.5 imp fl oz");
  CHECK(to_text((*readings)[2]) == "17.5 oz");

  const auto volumes = parse_readings("17.5 oz", Dimension::volume);
  REQUIRE(volumes);
  CHECK(volumes->size() == 2);

  const auto pair = parse_readings("1 gal (4 qt)", std::nullopt);
  REQUIRE(pair);
  CHECK(pair->size() == 4);

  const auto plain = parse_readings("28 N·m", std::nullopt);
  REQUIRE(plain);
  CHECK(plain->size() == 1);
  CHECK_FALSE(parse_readings("28 foo", std::nullopt));
}

TEST_CASE("text that is too long, not UTF-8 or full of controls is refused") {
  CHECK_FALSE(parse_statement(std::string(1001, '1'), std::nullopt, Input::prompt));
  CHECK_FALSE(parse_figure(std::string(1001, '1'), std::nullopt, Input::prompt));
  CHECK_FALSE(parse_statement("28 N·m, \xFF", std::nullopt, Input::sheet));
  CHECK_FALSE(parse_statement("28 N\xC2", std::nullopt, Input::sheet));
  CHECK_FALSE(parse_statement(std::string_view("28 N·m, a\0b", 12), std::nullopt, Input::sheet));
  CHECK_FALSE(parse_statement("28 N·m, a\nb", std::nullopt, Input::sheet));
  CHECK(parse_statement("28\u00A0N·m", std::nullopt, Input::sheet));
}

TEST_CASE("a figure is shown as the SI brochure sets it") {
  const auto shown_of = [](const char* text) {
    return shown(*parse_statement(text, std::nullopt, Input::sheet));
  };
  CHECK(shown_of("28 Nm") == "28\u00A0N·m");
  CHECK(shown_of("25..31 Nm") == "25–31\u00A0N·m");
  CHECK(shown_of("-5 °C") == "−5\u00A0°C");
  CHECK(shown_of("-5..10 °C") == "−5 to 10\u00A0°C");
  CHECK(shown_of("90°") == "90°");
  CHECK(shown_of("12000 km") == "12\u202F000\u00A0km");
  CHECK(shown_of("6000 km") == "6000\u00A0km");
  CHECK(shown_of("28 (25..31) N·m") == "28\u00A0N·m (25–31)");
  CHECK(shown_of("28 N·m ± 5 %") == "28\u00A0N·m ± 5\u00A0%");
}

TEST_CASE("the band in base units serves a search") {
  const auto band = [](const char* text) {
    return base_band(*parse_figure(text, std::nullopt, Input::sheet));
  };
  CHECK(band("25..31 N·m").least == 25);
  CHECK(band("25..31 N·m").most == 31);
  CHECK(band("28 mm").least == doctest::Approx(0.028));
  CHECK(band("28 mm").most == band("28 mm").least);
  CHECK(band("max 2 bar").most == 200000);
  CHECK(band("max 2 bar").least == -std::numeric_limits<double>::infinity());
  CHECK(band("min 2 bar").most == std::numeric_limits<double>::infinity());
  CHECK(band("212 °F").least == doctest::Approx(373.15));
  CHECK(band("2 turns").least == 720);
}
