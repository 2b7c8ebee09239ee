// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/drive.h"

#include <doctest/doctest.h>

using namespace sheaf;

namespace {

std::string canonical(std::string_view text, Input input = Input::prompt) {
  auto drive = parse_drive(text, input);
  return drive ? to_text(*drive) : "failure: " + drive.failure().message;
}
std::string key(std::string_view text) { return drive_key(*parse_drive(text, Input::prompt)); }

}  // namespace

TEST_CASE("a hexagon reads by its name, by its flats and by the tool for it") {
  for (std::string_view text : {"hexagon 27 mm", "27 mm hexagon", "27mm hex", "hex 27", "27 mm AF",
                                "AF 27 mm", "27 a/f", "27 mm across flats", "27mm socket", "27 mm spanner",
                                "27 mil nut", "hex head 27 mm", "SW27", "27mm", "27 mil"}) {
    CAPTURE(text);
    CHECK(canonical(text) == (std::string_view(text) == "SW27" ? canonical("SW27") : "hexagon 27 mm"));
  }
  CHECK(canonical("46mm socket") == "hexagon 46 mm");
  CHECK(canonical("hexagon 5.5 mm") == "hexagon 5.5 mm");
  CHECK(canonical("hexagon 9/16 in") == "hexagon 9/16 in");
  CHECK(canonical("9/16 socket") == "hexagon 9/16 in");
  CHECK(*across_flats_mm(*parse_drive("hexagon 1/2 in", Input::sheet)) == doctest::Approx(12.7));
}

TEST_CASE("every other shape has a name, and hex socket is not a socket") {
  CHECK(canonical("hex socket 6 mm") == "hex socket 6 mm");
  CHECK(canonical("6 mm hex key") == "hex socket 6 mm");
  CHECK(canonical("6mm hex bit") == "hex socket 6 mm");
  CHECK(canonical("12 mm hex socket") == "hex socket 12 mm");
  CHECK(canonical("T30") == "T30");
  CHECK(canonical("t 30") == "T30");
  CHECK(canonical("six-lobe T30") == "T30");
  CHECK(canonical("T30 bit") != "T30");
  CHECK(canonical("E12") == "E12");
  CHECK(canonical("PH2") == "cross PH2");
  CHECK(canonical("cross pz 2") == "cross PZ2");
  CHECK(canonical("slot") == "slot");
  CHECK(canonical("square 3/8 in") == "square 3/8 in");
  CHECK(canonical("3/8\" square drive") == "square 3/8 in");
  CHECK(canonical("pin 5 mm") == "peg 5 mm");
  CHECK(canonical("castellated 4 slots") == "castellated 4 slots");
  CHECK(canonical("12-point 14 mm") == "twelve-point 14 mm");
  CHECK(canonical("knurled") == "knurled");
}

TEST_CASE("keys match by number") {
  CHECK(key("hexagon 27.0 mm") == "hexagon-27");
  CHECK(key("27mm socket") == "hexagon-27");
  CHECK(key("hex socket 6 mm") == "hex-socket-6");
  CHECK(key("T30") == "t30");
  CHECK(key("cross PH2") == "ph2");
  CHECK(key("1/2 in hexagon") == "hexagon-1/2in");
}

TEST_CASE("a sheet names shape and unit") {
  CHECK(canonical("hexagon 27 mm", Input::sheet) == "hexagon 27 mm");
  CHECK_FALSE(parse_drive("hexagon 27", Input::sheet));
  CHECK_FALSE(parse_drive("27 mm", Input::sheet));
  CHECK_FALSE(parse_drive("27 mm socket", Input::sheet));
  CHECK_FALSE(parse_drive("hexagon 27 mil", Input::sheet));
  for (std::string_view text :
       {"hexagon 27 mm", "hex socket 6 mm", "T30", "E12", "cross PH2", "slot", "square 3/8 in", "peg 5 mm",
        "castellated 4 slots", "twelve-point 14 mm", "knurled", "six-lobe", "external six-lobe"}) {
    CHECK(canonical(text, Input::sheet) == text);
  }
}

TEST_CASE("what is no drive is refused") {
  for (std::string_view text : {"", "27", "banana", "hexagon T30", "hexagon 27 mm 28 mm", "T", "hexagon 0 mm",
                                "T999", "hexagon 4 slots", "28 N·m"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_drive(text, Input::prompt));
  }
}

TEST_CASE("a numbered drive has a whole number and no unit of length") {
  for (const Input input : {Input::sheet, Input::prompt})
    for (const char* text : {"cross 3 in", "cross 3 mm", "cross 2.5", "cross 1/2", "cross 1000",
                             "six-lobe 2.5", "six-lobe 101"}) {
      CAPTURE(text);
      CHECK_FALSE(parse_drive(text, input));
    }
  CHECK(canonical("cross 2") == "cross PH2");
  CHECK(canonical("six-lobe 30") == "T30");
  CHECK(canonical("six-lobe 5.5 mm") == "six-lobe 5.5 mm");
}
