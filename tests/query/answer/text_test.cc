// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/text.h"

#include <doctest/doctest.h>

using namespace sheaf;

TEST_CASE("width counts columns, not bytes") {
  CHECK(display_width("28 N·m") == 6);
  CHECK(display_width("≈ 20.7 lbf·ft") == 13);
  CHECK(display_width("e\u0301crou") == 5);  // a combining accent takes no column
  CHECK(display_width("螺") == 2);
  CHECK(display_width("\xFF") == 1);
  CHECK(display_width("") == 0);
}

TEST_CASE("what could steer a terminal never reaches it") {
  CHECK(clean("a\033[31mb") == "a[31mb");
  CHECK(clean("two\nlines\tand a tab") == "two lines and a tab");
  CHECK(clean("ab\u202Ecd") == "abcd");  // turns the direction of text
  CHECK(clean("zero\u200Bwidth") == "zerowidth");
  CHECK(clean("c1 \xC2\x9B control") == "c1  control");
  CHECK(clean("\xC3(") == "?(");
  CHECK(clean("\xE2\x82") == "??");  // cut off
  CHECK(clean("\xC0\xAF") == "??");  // an overlong form
  CHECK(clean("28 N·m ± 5 % – Gabelöl") == "28 N·m ± 5 % – Gabelöl");
}

TEST_CASE("plain ASCII says the same in other signs") {
  CHECK(plain_ascii("28 N·m ± 3") == "28 N.m +/- 3");
  CHECK(plain_ascii("41 × 54 × 11 mm") == "41 x 54 x 11 mm");
  CHECK(plain_ascii("−40 °C") == "-40 deg C");
  CHECK(plain_ascii("25–31") == "25-31");
  CHECK(plain_ascii("Gabelöl, étrier") == "Gabeloel, etrier");
  CHECK(plain_ascii("螺") == "?");
}

TEST_CASE("wrapping breaks at spaces and loses nothing") {
  CHECK(wrap("one two three", 7) == std::vector<std::string>{"one two", "three"});
  CHECK(wrap("", 10) == std::vector<std::string>{""});
  CHECK(wrap("unbreakable", 4) == std::vector<std::string>{"unbr", "eaka", "ble"});
  CHECK(wrap("28\u00A0N·m more", 6) == std::vector<std::string>{"28\u00A0N·m", "more"});
  for (int width = 1; width < 40; ++width) {
    std::string joined_again;
    for (const auto& line : wrap("Hold the plug down on its last threads; eye protection.", width)) {
      CHECK(display_width(line) <= width);
      joined_again += line;
    }
    std::erase(joined_again, ' ');
    CHECK(joined_again == "Holdtheplugdownonitslastthreads;eyeprotection.");
  }
}
