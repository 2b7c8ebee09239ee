// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/bearing.h"

#include <doctest/doctest.h>

using namespace sheaf;

namespace {

std::string canonical(std::string_view text) {
  auto bearing = parse_bearing(text, Input::prompt);
  return bearing ? to_text(*bearing) : "failure: " + bearing.failure().message;
}
double bore(std::string_view text) { return parse_bearing(text, Input::prompt)->bore_mm.value_or(0); }
std::string start_of(std::string_view text) {
  auto found = bearing_at(text, Input::prompt);
  return found
             ? to_text(found->value) + "|" + std::string(text.substr(static_cast<std::size_t>(found->length)))
             : "";
}

}  // namespace

TEST_CASE("a bearing number reads with its suffixes in any order and joint") {
  for (std::string_view text : {"6203-2RS C3", "6203-2rs-c3", "6203 2RS C3", "6203 2rs/c3", "6203-2RS1/C3",
                                "6203 c3 2rs", "6203-2RSC3"}) {
    CAPTURE(text);
    CHECK(canonical(text) == "6203-2RS C3");
  }
  CHECK(canonical("6203-2rs") == "6203-2RS");
  CHECK(canonical("6203") == "6203");
  CHECK(canonical("6203ZZ") == "6203-2Z");
  CHECK(canonical("6203-2Z") == "6203-2Z");
  CHECK(canonical("6203 z") == "6203-Z");
  CHECK(canonical("6203 C3") == "6203 C3");
  CHECK(canonical("32006X") == "32006 X");
  CHECK(canonical("320/28X") == "320/28 X");
  CHECK(canonical("nu205") == "NU205");
  CHECK(canonical("hk1612") == "HK1612");
}

TEST_CASE("the bore code gives the bore") {
  CHECK(bore("6000") == 10);
  CHECK(bore("6001") == 12);
  CHECK(bore("6202") == 15);
  CHECK(bore("6203") == 17);
  CHECK(bore("6204") == 20);
  CHECK(bore("6302") == 15);
  CHECK(bore("32006") == 30);
  CHECK(bore("62/22") == 22);
  CHECK(bore("320/28") == 28);
  CHECK(bore("16002") == 15);
  CHECK(bore("6804") == 20);
  CHECK(bore("61804") == 20);
  CHECK(bore("608") == 8);
  CHECK(bore("618/8") == 8);
  CHECK(bore("623") == 3);
  CHECK(bore("62203") == 17);
  CHECK(bore("6222") == 110);
  CHECK(bore("NU205") == 25);
  CHECK(bore("HK1612") == 16);
}

TEST_CASE("years, sizes and words are no bearings") {
  for (std::string_view text : {"", "2013", "1998", "17x40x12", "6203-XYZ", "62", "620", "6200000", "62/0",
                                "6297", "bearing", "6203 seal", "28 N·m", "690"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_bearing(text, Input::prompt));
  }
}

TEST_CASE("a bearing is found at the start of more words") {
  CHECK(start_of("6203 2rs both sides") == "6203-2RS| both sides");
  CHECK(start_of("6302 vs 6203") == "6302| vs 6203");
  CHECK(start_of("6203 x 2") == "6203| x 2");
  CHECK(start_of("1200 oil") == "");
  CHECK(start_of("2203-2rs") == "2203-2RS|");
  CHECK(start_of("6203a") == "");
}

TEST_CASE("every part of a designation is explained") {
  auto meanings = explain(*parse_bearing("6203-2RS C3", Input::prompt));
  REQUIRE(meanings.size() == 4);
  CHECK(meanings[0].part == "62");
  CHECK(meanings[0].says == "deep groove ball, medium section");
  CHECK(meanings[1].part == "03");
  CHECK(meanings[1].says == "bore 17 mm");
  CHECK(meanings[2].says == "a contact seal on both sides");
  CHECK(meanings[3].says == "internal clearance more than normal");
  for (std::string_view text : {"608", "62/22", "32006 X", "NU205", "HK1612", "618/8", "6004 NR"}) {
    CAPTURE(text);
    auto parts = explain(*parse_bearing(text, Input::prompt));
    CHECK(parts.size() >= 2);
    for (const Meaning& meaning : parts) CHECK_FALSE(meaning.says.empty());
  }
}

TEST_CASE("letters alone, with more behind them, are printed as they are read") {
  for (const char* text : {"7312x/n", "6203-n-x", "6203 2rs-n-c3"}) {
    const auto bearing = parse_bearing(text, Input::prompt);
    REQUIRE(bearing);
    const std::string printed = to_text(*bearing);
    CAPTURE(printed);
    const auto again = parse_bearing(printed, Input::prompt);
    REQUIRE(again);
    CHECK(again->suffix == bearing->suffix);
    CHECK(to_text(*again) == printed);
  }
}
