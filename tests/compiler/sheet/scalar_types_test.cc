// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/sheet/scalar_types.h"

#include <doctest/doctest.h>

using namespace sheafc;

namespace {

// What the text reads as, in its canonical spelling; or "! " and the failure.
template <typename Parse>
std::string reads(Parse parse, std::string_view text) {
  const auto value = parse(text);
  return value ? to_text(*value) : "! " + value.failure().message;
}

// The characters that a failure marks; the whole text where it marks none.
template <typename Parse>
std::string marked(Parse parse, std::string_view text) {
  const auto value = parse(text);
  REQUIRE_FALSE(value);
  const sheaf::Failure& failure = value.failure();
  if (failure.length == 0) return std::string(text);
  REQUIRE(failure.at + failure.length <= static_cast<int>(text.size()));
  return std::string(
      text.substr(static_cast<std::size_t>(failure.at), static_cast<std::size_t>(failure.length)));
}

}  // namespace

TEST_CASE("a date is a day that the calendar has") {
  CHECK(reads(parse_date, "2026-10-02") == "2026-10-02");
  CHECK(reads(parse_date, "2024-02-29") == "2024-02-29");
  CHECK(reads(parse_date, "2000-02-29") == "2000-02-29");
  CHECK(marked(parse_date, "2026-02-29") == "29");
  CHECK(marked(parse_date, "1900-02-29") == "29");
  CHECK(marked(parse_date, "2026-13-02") == "13");
  CHECK(marked(parse_date, "2026-00-02") == "00");
  CHECK(marked(parse_date, "2026-04-31") == "31");
  CHECK(marked(parse_date, "0000-01-01") == "0000");
  for (const char* wrong : {"", "2026-1-2", "02.10.2026", "2026/10/02", "2026-10-02 ", "２０２６-10-02"})
    CHECK(marked(parse_date, wrong) == wrong);
}

TEST_CASE("dates are in the order of days") {
  CHECK(*parse_date("2026-10-02") < *parse_date("2026-10-03"));
  CHECK(*parse_date("2025-12-31") < *parse_date("2026-01-01"));
}

TEST_CASE("years have one canonical spelling, and an open end is 0") {
  CHECK(reads(parse_years, "2013") == "2013");
  CHECK(reads(parse_years, "2013..2013") == "2013");
  CHECK(reads(parse_years, "2011 .. 2015") == "2011..2015");
  CHECK(reads(parse_years, "2016..") == "2016..");
  CHECK(reads(parse_years, "..2010") == "..2010");
  CHECK(parse_years("2016..")->to == 0);
  CHECK(parse_years("..2010")->from == 0);
}

TEST_CASE("years that people write otherwise are refused with the spelling that does") {
  for (const char* wrong : {"2011-2015", "2011–2015", "2011 - 2015", "2011 to 2015", "2011…2015"}) {
    CHECK(reads(parse_years, wrong) == "! a span of years is written with two points: 2011..2015");
  }
  CHECK(marked(parse_years, "11..2015") == "11");
  CHECK(marked(parse_years, "2011..15") == "15");
  CHECK(marked(parse_years, "2011..3015") == "3015");
  for (const char* wrong : {"", "..", "2015..2011", "MMXI", "20131"})
    CHECK(marked(parse_years, wrong) == wrong);
}

TEST_CASE("frame numbers share the letters before their last digits") {
  CHECK(reads(parse_frames, "HK4-000100..HK4-004999") == "HK4-000100..HK4-004999");
  CHECK(reads(parse_frames, "..HK4-004999") == "..HK4-004999");
  CHECK(reads(parse_frames, "HK4-005000..") == "HK4-005000..");
  CHECK(reads(parse_frames, "HK4-005000") == "HK4-005000");
  CHECK(marked(parse_frames, "HK4-000100..HK5-000200") == "HK5-000200");
  CHECK(marked(parse_frames, "HK4-..HK4-004999") == "HK4-");
  CHECK(marked(parse_frames, "HK4-1234567890123456") == "HK4-1234567890123456");
  for (const char* wrong : {"", "..", "HK4-2..HK4-1", "HK4_1"}) CHECK_FALSE(parse_frames(wrong));
  CHECK(take_apart("HK4-004999").series == "HK4-");
  CHECK(take_apart("HK4-004999").number == 4999);
}

TEST_CASE("a count is a whole number, alone or per something") {
  CHECK(reads(parse_count, "2") == "2");
  CHECK(reads(parse_count, "1 per leg") == "1 per leg");
  CHECK(reads(parse_count, "2  per side") == "2 per side");
  CHECK(marked(parse_count, "0") == "0");
  CHECK(marked(parse_count, "1 pro leg") == "pro leg");
  CHECK(marked(parse_count, "1 per ") == "per");
  for (const char* wrong : {"", "one", "1/leg", "-1", "1.0", "01", "10000"}) CHECK_FALSE(parse_count(wrong));
}

TEST_CASE("a whole number is taken digit by digit or not at all") {
  CHECK(*parse_integer("0") == 0);
  CHECK(*parse_integer("2012") == 2012);
  CHECK(*parse_integer("999999999") == 999'999'999);
  for (const char* wrong : {"", "010", "0x10", "1e3", "1_000", "+1", "-1", "1.0", "12:30", "1000000000",
                            "99999999999999999999", "२"}) {
    CHECK_FALSE(parse_integer(wrong));
  }
}

TEST_CASE("an interval is a distance, a time, or whichever comes first") {
  CHECK(reads(parse_interval, "10 000 km  or 12 month") == "10000 km or 12 months");
  CHECK(reads(parse_interval, "24 months") == "24 months");
  CHECK(marked(parse_interval, "10 000 km or 12 mm") == "12 mm");
  CHECK(marked(parse_interval, "10 000 km or 12 monts") == "monts");
  for (const char* wrong : {"", "10 000", "12:30", "often", " or ", "10 km or "})
    CHECK_FALSE(parse_interval(wrong));
}

TEST_CASE("an address is sheet and entry, or an entry alone") {
  CHECK(reads(parse_address, "sorvane-41-rod/top-plug") == "sorvane-41-rod/top-plug");
  CHECK(reads(parse_address, "top-plug") == "top-plug");
  CHECK(reads(parse_address, "iso-metric-threads/m8x1.25") == "iso-metric-threads/m8x1.25");
  for (const char* wrong : {"", "/", "a/", "/a", "a/b/c", "Top plug", "a b", "../a"})
    CHECK_FALSE(parse_address(wrong));
}

TEST_CASE("a pattern is numbers in order") {
  CHECK(reads(parse_pattern, "1-4-2-3") == "1-4-2-3");
  CHECK(reads(parse_pattern, "1, 4, 2, 3") == "1-4-2-3");
  CHECK(reads(parse_pattern, "1 4 2 3") == "1-4-2-3");
  CHECK(parse_pattern("1-4-2-3")->order == std::vector<int>{1, 4, 2, 3});
  CHECK(marked(parse_pattern, "1-x-2") == "x");
  for (const char* wrong : {"", "1", "crosswise", "1--2", "1-2-", "-1-2", "1-2-1000"})
    CHECK_FALSE(parse_pattern(wrong));
}

TEST_CASE("names are kebab-case, and the failure gives the name that would do") {
  for (const char* name : {"a", "top-plug", "m8x1.25", "41x54x11", "5-16-18-unc"}) CHECK(is_name(name));
  for (const char* wrong : {"", "-a", "a-", "a--b", "Top", "a b", "a_b", "a.", ".a", "a.b", "é"})
    CHECK_FALSE(is_name(wrong));
  CHECK_FALSE(is_name(std::string(81, 'a')));
  CHECK(parse_name("Fork Cap").failure().message ==
        "'Fork Cap' is not a name: lower-case letters, digits and hyphens, as fork-cap");
}

TEST_CASE("kebab-case of whatever is a name or nothing") {
  CHECK(kebab_case("M8x1.25") == "m8x1.25");
  CHECK(kebab_case("#10-32 UNF") == "10-32-unf");
  CHECK(kebab_case("5/16-18 UNC") == "5-16-18-unc");
  CHECK(kebab_case("  Fork   cap (upper) ") == "fork-cap-upper");
  CHECK(kebab_case("°") == "");
  for (const char* text : {"M8x1.25", "a.b", "1..2", "--", "Étrier 3.", "x.1.2.", "SAE 10W-40"}) {
    const std::string name = kebab_case(text);
    CHECK_MESSAGE((name.empty() || is_name(name)), name);
  }
}
