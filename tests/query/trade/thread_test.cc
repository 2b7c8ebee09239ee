// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/thread.h"

#include <doctest/doctest.h>

using namespace sheaf;

namespace {

std::string canonical(std::string_view text, Input input = Input::prompt) {
  auto thread = parse_thread(text, input);
  return thread ? to_text(*thread) : "failure: " + thread.failure().message;
}
std::string key(std::string_view text) {
  auto thread = parse_thread(text, Input::prompt);
  return thread ? thread_key(*thread) : "failure: " + thread.failure().message;
}
std::string start_of(std::string_view text) {
  auto found = thread_at(text, Input::prompt);
  return found
             ? to_text(found->value) + "|" + std::string(text.substr(static_cast<std::size_t>(found->length)))
             : "";
}

}  // namespace

TEST_CASE("a metric thread reads in every spelling of its cross and its comma") {
  for (std::string_view text : {"M8x1.25", "m8x1.25", "M8 x 1.25", "m8 × 1,25", "M8×1.25", "M8*1.25",
                                "M 8x1.25", "M8-1.25", "M8 1.25", "M8xP1.25", " M8x1.250 ", "M8 X 1.25"}) {
    CAPTURE(text);
    CHECK(canonical(text) == "M8x1.25");
    CHECK(key(text) == "m8x1.25");
  }
  CHECK(canonical("M8") == "M8");
  CHECK(canonical("m14") == "M14");
  CHECK(canonical("M2.5x0.45") == "M2.5x0.45");
  CHECK(key("M36x1.5") == "m36x1.5");
  CHECK(key("M8x1") != key("M8x1.25"));
}

TEST_CASE("an inch thread reads with its mark, its series or neither") {
  CHECK(canonical("5/16-18") == "5/16-18");
  CHECK(canonical("5/16-18 UNC") == "5/16-18 UNC");
  CHECK(canonical("5/16 unc") == "5/16 UNC");
  CHECK(canonical("unc 5/16-18") == "5/16-18 UNC");
  CHECK(canonical("1/4\"-20") == "1/4-20");
  CHECK(canonical("1/4 in-20") == "1/4-20");
  CHECK(canonical("¼-20 UNC") == "1/4-20 UNC");
  CHECK(canonical("0.250-20 UNC") == "1/4-20 UNC");
  CHECK(canonical("1/4 x 28 unf") == "1/4-28 UNF");
  CHECK(canonical("1-1/2-6 UNC") == "1-1/2-6 UNC");
  CHECK(canonical("1 1/2-6 UNC") == "1-1/2-6 UNC");
  CHECK(canonical("1½-6 UNC") == "1-1/2-6 UNC");
  CHECK(canonical("1-8 UNC") == "1-8 UNC");
  CHECK(canonical("2-4.5 UNC") == "2-4.5 UNC");
  CHECK(canonical("2-4 1/2 UNC") == "2-4.5 UNC");
  CHECK(key("5/16-18 UNC") == key("5/16\"-18"));
  CHECK(key("5/16 unc") == "5/16 unc");
}

TEST_CASE("a number size reads with its sign, without it, and by its decimal") {
  for (std::string_view text :
       {"#10-32", "10-32", "10-32 unf", "No. 10-32", "no 10-32", "№10-32", "0.190-32"}) {
    CAPTURE(text);
    CHECK(key(text) == "#10-32");
  }
  CHECK(canonical("10-32 unf") == "#10-32 UNF");
  CHECK(key("1-64") == "#1-64");
  CHECK(key("1-8") == "1-8");
  CHECK(canonical("10 unf") == "#10 UNF");
  CHECK(canonical("1 unf") == "1 UNF");
}

TEST_CASE("pipe threads keep the name that tells them apart") {
  CHECK(canonical("G1/4") == "G1/4");
  CHECK(canonical("g 1/4") == "G1/4");
  CHECK(canonical("1/4 bspp") == "G1/4");
  CHECK(canonical("1/8-27 NPT") == "1/8-27 NPT");
  CHECK(key("1/8 npt") == "1/8 npt");
  CHECK(key("G1/4-19") == "g1/4");
  CHECK_FALSE(diameter_mm(*parse_thread("G1/4", Input::sheet)));
}

TEST_CASE("hand, tolerance and length are kept apart from the size") {
  for (std::string_view text :
       {"M10x1.25 LH", "m10x1.25lh", "M10x1.25-LH", "M10x1.25 left-hand", "M10x1.25 left hand"}) {
    CAPTURE(text);
    auto thread = parse_thread(text, Input::prompt);
    REQUIRE(thread);
    CHECK(thread->left_hand);
    CHECK(to_text(*thread) == "M10x1.25 LH");
    CHECK(thread_key(*thread) == "m10x1.25");
  }
  CHECK(canonical("M8x1.25-6g") == "M8x1.25-6g");
  CHECK(canonical("M8-6H") == "M8-6H");
  CHECK(canonical("M8x1.25-5g6g LH") == "M8x1.25-5g6g LH");
  CHECK(canonical("1/4-20 UNC-2a") == "1/4-20 UNC-2A");
  CHECK(canonical("1/4-20 UNC 2A") == "1/4-20 UNC-2A");
  CHECK(canonical("M8x1.25x30") == "M8x1.25x30");
  CHECK(canonical("M8x30") == "M8x30");
  CHECK(key("M8x30") == "m8");
  CHECK(canonical("M8x2.5") == "M8x2.5");  // no such thread, but a pitch: a rule says so, not the reader
}

TEST_CASE("a sheet is refused what a prompt forgives, at its place") {
  CHECK(canonical("M8x1.25", Input::sheet) == "M8x1.25");
  CHECK(canonical("M8 × 1.25", Input::sheet) == "M8x1.25");
  auto comma = parse_thread("M8x1,25", Input::sheet);
  REQUIRE_FALSE(comma);
  CHECK(comma.failure().at == 3);
  auto length = parse_thread("M8 × 30", Input::sheet);
  REQUIRE_FALSE(length);
  CHECK(length.failure().at == 6);  // bytes: × takes two
  auto rest = parse_thread("M8x1.25 zinc", Input::sheet);
  REQUIRE_FALSE(rest);
  CHECK(rest.failure().at == 8);
  CHECK(rest.failure().length == 4);
}

TEST_CASE("what is no thread is refused") {
  for (std::string_view text :
       {"",        "M",   "Mx1",           "M0", "M8x",  "M8x0",  "8mm",  "5/16",   "5/0-18", "#-32",
        "13-32 #", "UNC", "M8x1.25x30x40", "G",  "G9/0", "M8-6z", "10.9", "28 N·m", "#13-20", "-M8"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_thread(text, Input::prompt));
  }
}

TEST_CASE("a thread is found at the start of more words") {
  CHECK(start_of("m8 x 1.25 10.9") == "M8x1.25| 10.9");
  CHECK(start_of("m8 10.9") == "M8| 10.9");
  CHECK(start_of("m10 1.5 kgm") == "M10| 1.5 kgm");
  CHECK(start_of("5/16-18 bolt") == "5/16-18| bolt");
  CHECK(start_of("10-32 unf screw") == "#10-32 UNF| screw");
  CHECK(start_of("M8x1.25 × 30 bolt") == "M8x1.25x30| bolt");
  CHECK(start_of("m10x1.25 lh nut") == "M10x1.25| lh nut");
  CHECK(start_of("m10x1.25 left fork") == "M10x1.25| left fork");
  CHECK(start_of("m10x1.25 left-hand nut") == "M10x1.25 LH| nut");
  CHECK(start_of("20-30 nm") == "");
  CHECK(start_of("1-8 nm") == "");
  CHECK(start_of("m8s") == "");
  CHECK(start_of("g 5 grease") == "");
  CHECK(start_of("muleback 380") == "");
}

TEST_CASE("diameter and pitch come from the designation by the standards' own rules") {
  CHECK(*diameter_mm(*parse_thread("M8x1.25", Input::sheet)) == doctest::Approx(8));
  CHECK(*diameter_mm(*parse_thread("1/4-20", Input::sheet)) == doctest::Approx(6.35));
  CHECK(*diameter_mm(*parse_thread("#10-32", Input::sheet)) == doctest::Approx(0.190 * 25.4));  // ASME B1.1
  CHECK(*diameter_mm(*parse_thread("#0-80", Input::sheet)) == doctest::Approx(0.060 * 25.4));
  CHECK(*pitch_mm(*parse_thread("5/16-18", Input::sheet)) == doctest::Approx(25.4 / 18));
  CHECK_FALSE(pitch_mm(*parse_thread("M8", Input::sheet)));
}

TEST_CASE("what is printed reads back to itself") {
  for (std::string_view text : {"M8", "M8x1.25", "M8x1.25-6g LH", "5/16-18 UNC", "5/16 UNF", "#10-32 UNF",
                                "G1/4", "R1/8", "1/8-27 NPT", "1-1/2-6 UNC-2A", "1-8", "1/4 BSP"}) {
    CHECK(canonical(text, Input::sheet) == text);
  }
}

TEST_CASE("an inch cut as finely as a size by number keeps its mark") {
  for (const Input input : {Input::sheet, Input::prompt}) {
    CHECK(canonical("1\"-24", input) == "1 in-24");  // as on old steering stems; #1-24 would be 1.9 mm
    CHECK(canonical("1 in-24", input) == "1 in-24");
    CHECK(canonical("5 in UNC", input) == "5 in UNC");
    CHECK(canonical("#10-32", input) == "#10-32");
  }
  CHECK(canonical("1-8") == "1-8");
  CHECK(key("1 in-24") != key("#1-24"));
}
