// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/size.h"

#include <doctest/doctest.h>

using namespace sheaf;

namespace {

std::string canonical(std::string_view text, Input input = Input::prompt) {
  auto size = parse_size(text, input);
  return size ? to_text(*size) : "failure: " + size.failure().message;
}
std::string key(std::string_view text) { return size_key(*parse_size(text, Input::prompt)); }

}  // namespace

TEST_CASE("a size reads in every spelling of its cross, its comma and its spaces") {
  for (std::string_view text :
       {"43x55x9.5", "43 55 9,5", "43 × 55 × 9.5", "43*55*9.5", "43X55X9.5", "ø43x55x9.5", "43 x 55 x 9.5 mm",
        "43mmx55mmx9.5mm", "43 by 55 by 9.5", "43x55x9.50", "43 x Ø55 x 9,50"}) {
    CAPTURE(text);
    CHECK(key(text) == "43x55x9.5");
  }
  CHECK(canonical("41x54x11") == "41x54x11");
  CHECK(canonical("30 40 7") == "30x40x7");
  CHECK(canonical("55x43") == "55x43");
  CHECK(canonical("43x55x9.50") == "43x55x9.50");
  CHECK(key("48x58x9") != key("48x58x9.5"));
}

TEST_CASE("a stepped height keeps both heights") {
  CHECK(canonical("43*55*9.5/10.5") == "43x55x9.5/10.5");
  CHECK(canonical("43x55x9/10") == "43x55x9/10");
  CHECK(canonical("35 48 8/10.5") == "35x48x8/10.5");
  CHECK_FALSE(parse_size("43x55x9.5/", Input::prompt));
  CHECK_FALSE(parse_size("43x55x1/4", Input::prompt));  // inches or two heights? neither is likely
  CHECK_FALSE(parse_size("55x9.5/10.5", Input::prompt));
  CHECK_FALSE(parse_size("12x3\"x2 /4", Input::prompt));  // a fraction of an inch, gone astray
}

TEST_CASE("inches are named, or told by their fractions") {
  CHECK(canonical("1.5 x 2.0 in") == "1.5x2.0 in");
  CHECK(key("1.5 x 2.0 in") == "1.5x2in");
  CHECK(key("1-1/2 x 2 x 1/4 in") == "1.5x2x0.25in");
  CHECK(key("1-1/2 x 2 x 1/4") == "1.5x2x0.25in");
  CHECK(canonical("1.69 inch") == "1.69 in");
  CHECK(dimension_mm(*parse_size("1.69 inch", Input::prompt), 0) == doctest::Approx(42.926));
  CHECK_FALSE(parse_size("41 mm x 2.2 in", Input::prompt));
  CHECK_FALSE(parse_size("1-1/2x2x1/4", Input::sheet));
  CHECK(canonical("1-1/2x2x1/4 in", Input::sheet) == "1-1/2x2x1/4 in");
}

TEST_CASE("one dimension alone needs a sign or a unit") {
  CHECK(canonical("ø43") == "43 mm");
  CHECK(canonical("43 mm") == "43 mm");
  CHECK_FALSE(parse_size("43", Input::prompt));
  CHECK_FALSE(parse_size("2013", Input::prompt));
}

TEST_CASE("a sheet parts by x alone and has a decimal point") {
  CHECK(canonical("41 × 54 × 11", Input::sheet) == "41x54x11");
  CHECK_FALSE(parse_size("41 54 11", Input::sheet));
  auto comma = parse_size("43x55x9,5", Input::sheet);
  REQUIRE_FALSE(comma);
  CHECK(comma.failure().at == 6);
}

TEST_CASE("what is no size is refused") {
  for (std::string_view text : {"", "x", "41x", "41xx54", "41x54x11x7x3", "0x54", "seal", "41-22x7-b",
                                "41x54x", "1e3x2", "41-22/2 in"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_size(text, Input::prompt));
  }
}

TEST_CASE("a size is found at the start of more words") {
  auto found = size_at("17x40x12 both sides", Input::prompt);
  REQUIRE(found);
  CHECK(size_key(found->value) == "17x40x12");
  CHECK(found->length == 8);
  CHECK_FALSE(size_at("43 fork", Input::prompt));
  CHECK_FALSE(size_at("41x54x11abc", Input::prompt));
}

TEST_CASE("what is printed reads back to itself") {
  for (std::string_view text :
       {"41x54x11", "43x55x9.5/10.5", "43x55x9/10", "1.5x2.0 in", "1-1/2x2x1/4 in", "43 mm", "1.69 in"}) {
    CHECK(canonical(text, Input::sheet) == text);
  }
}
