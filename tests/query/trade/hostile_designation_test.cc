// SPDX-License-Identifier: GPL-2.0-or-later
// Whatever bytes arrive, the readers answer or refuse: they never crash, and a failure marks bytes
// that exist. What they accept, they print and read back to the same.
#include <doctest/doctest.h>

#include <random>
#include <string>

#include "query/trade/designation.h"

using namespace sheaf;

namespace {

template <typename Value>
void check_place(const Result<Value>& result, std::string_view text) {
  if (result) return;
  CHECK(result.failure().at >= 0);
  CHECK(result.failure().length >= 0);
  CHECK(static_cast<std::size_t>(result.failure().at + result.failure().length) <= text.size());
  CHECK_FALSE(result.failure().message.empty());
}

template <typename Value, typename Parse>
void check_round_trip(const Result<Value>& result, Parse parse) {
  if (!result) return;
  const std::string printed = to_text(*result);
  auto again = parse(printed, Input::prompt);
  CAPTURE(printed);
  REQUIRE(again);
  CHECK(to_text(*again) == printed);
}

void read_every_way(const std::string& text) {
  CAPTURE(text);
  for (Input input : {Input::sheet, Input::prompt}) {
    auto thread = parse_thread(text, input);
    auto drive = parse_drive(text, input);
    auto size = parse_size(text, input);
    auto bearing = parse_bearing(text, input);
    check_place(thread, text);
    check_place(drive, text);
    check_place(size, text);
    check_place(bearing, text);
    check_round_trip(thread, parse_thread);
    check_round_trip(drive, parse_drive);
    check_round_trip(size, parse_size);
    check_round_trip(bearing, parse_bearing);
    if (bearing) explain(*bearing);
    if (auto found = thread_at(text, input)) CHECK(static_cast<std::size_t>(found->length) <= text.size());
    if (auto found = size_at(text, input)) CHECK(static_cast<std::size_t>(found->length) <= text.size());
    if (auto found = bearing_at(text, input)) CHECK(static_cast<std::size_t>(found->length) <= text.size());
  }
}

}  // namespace

TEST_CASE("random pieces of designations never crash a reader") {
  const std::string pieces[] = {"M",
                                "m8",
                                "8",
                                "x",
                                "×",
                                "*",
                                "-",
                                "/",
                                "\"",
                                "#",
                                "1/4",
                                "10",
                                "32",
                                ".",
                                ",",
                                " ",
                                "UNC",
                                "unf",
                                "LH",
                                "6g",
                                "2A",
                                "mm",
                                "in",
                                "T",
                                "PH",
                                "hex",
                                "socket",
                                "ø",
                                "½",
                                "6203",
                                "2RS",
                                "C3",
                                "NU",
                                "HK",
                                "by",
                                "G",
                                "999999",
                                "0",
                                "\xff",
                                "\xe2\x80",
                                std::string(1, '\0'),
                                "9.5",
                                "9,5"};
  std::mt19937 random(20260101);
  std::uniform_int_distribution<std::size_t> which(0, std::size(pieces) - 1);
  std::uniform_int_distribution<int> how_many(0, 8);
  for (int round = 0; round < 20000; ++round) {
    std::string text;
    for (int left = how_many(random); left > 0; --left) text += pieces[which(random)];
    read_every_way(text);
  }
}

TEST_CASE("long texts are refused, not read") {
  read_every_way(std::string(1'000'000, 'M'));
  read_every_way(std::string(1'000'000, '9'));
  read_every_way("M8x1.25" + std::string(100'000, ' ') + "z");
  CHECK_FALSE(parse_thread("M8" + std::string(200, ' ') + "rubbish", Input::prompt));
  CHECK_FALSE(parse_size("41x54x11" + std::string(200, ' ') + "rubbish", Input::prompt));
}
