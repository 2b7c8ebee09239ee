// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/number.h"

#include <doctest/doctest.h>

#include "query/quantity/arithmetic.h"
#include "query/quantity/exact.h"
#include "tests/query/quantity/random_figure.h"
#include "tests/query/quantity/rational.h"

using namespace sheaf;
using test::rational;

namespace {

Number number(std::string_view text) {
  auto read = parse_number(text, Input::sheet);
  REQUIRE(read);
  return *read;
}

}  // namespace

TEST_CASE("a number is kept as it was written") {
  CHECK(number("28") == Number{28, 0, 1});
  CHECK(number("25.0") == Number{250, 1, 1});
  CHECK_FALSE(number("25.0") == number("25"));
  CHECK(number("-40") == Number{-40, 0, 1});
  CHECK(number("−40") == Number{-40, 0, 1});
  CHECK(number("0.05") == Number{5, 2, 1});
  CHECK(number("5/16") == Number{5, 0, 16});
  CHECK(number("1-1/2") == Number{3, 0, 2});
  CHECK(number("1 1/2") == Number{3, 0, 2});
  CHECK(number("-1-1/2") == Number{-3, 0, 2});
  CHECK(number("1 200") == Number{1200, 0, 1});
  CHECK(number("12 000.5") == Number{120005, 1, 1});
  CHECK(number(" 28 ") == Number{28, 0, 1});
  CHECK(number("999999999999999999") == Number{999999999999999999, 0, 1});
  CHECK(number("0.000000000000001") == Number{1, 15, 1});
}

TEST_CASE("what is no number is refused") {
  for (const char* text : {"",
                           " ",
                           "a",
                           "1a",
                           "1e3",
                           "1E-3",
                           "0x10",
                           "nan",
                           "inf",
                           "NaN",
                           ".5",
                           "5.",
                           "1.2.3",
                           "--1",
                           "+1",
                           "1/",
                           "/2",
                           "1/0",
                           "1/2/3",
                           "1-1/2-1/2",
                           "1 2",
                           "1 2345",
                           "1_000",
                           "1'000",
                           "½½",
                           "1000000000000000000",
                           "0.0000000000000001",
                           "1-",
                           "1,5",
                           "010",
                           "٣",
                           "1..2"}) {
    INFO(text);
    CHECK_FALSE(parse_number(text, Input::sheet));
  }
  CHECK_FALSE(parse_number(std::string(2000, '1'), Input::prompt));
  CHECK(parse_number("1,5", Input::prompt));
  CHECK_FALSE(parse_number("1,500", Input::prompt));
  CHECK_FALSE(parse_number("1,500,000", Input::prompt));
}

TEST_CASE("a number is written as it was") {
  for (const char* text : {"28", "25.0", "-40", "0.05", "5/16", "1-1/2", "-1-1/2", "8/4", "0", "0.0", "-0.5",
                           "999999999999999999", "0.000000000000001", "4/8"}) {
    INFO(text);
    CHECK(to_text(number(text)) == text);
  }
}

TEST_CASE("numbers compare by value, exactly") {
  CHECK(compare(number("25"), number("25.0")) == 0);
  CHECK(compare(number("1/2"), number("0.5")) == 0);
  CHECK(compare(number("-1"), number("0")) < 0);
  CHECK(compare(number("999999999999999999"), number("999999999999999998")) > 0);
  CHECK(compare(number("1/3"), number("0.333333333333333")) > 0);
  test::RandomFigures random(5);
  for (int i = 0; i < 100'000; ++i) {
    const Number left = random.number(15), right = random.number(15);
    INFO(to_text(left) << " and " << to_text(right));
    const mpq_class difference = rational(left) - rational(right);
    CHECK(compare(left, right) == sgn(difference));
  }
}

TEST_CASE("sums are exact or refused") {
  test::RandomFigures random(6);
  int refused = 0;
  for (int i = 0; i < 100'000; ++i) {
    const Number left = random.number(15), right = random.number(15);
    INFO(to_text(left) << " and " << to_text(right));
    if (const auto sum = add(left, right)) {
      CHECK(rational(*sum) == rational(left) + rational(right));
    } else {
      ++refused;
    }
    if (const auto difference = subtract(left, right)) {
      CHECK(rational(*difference) == rational(left) - rational(right));
    }
    const Number per_cent{random.below(100), 0, 1};
    if (const auto less = less_by_per_cent(left, per_cent)) {
      CHECK(rational(*less) == rational(left) * (100 - rational(per_cent)) / 100);
    }
  }
  CHECK(refused < 20'000);  // decimals that met a fraction
  CHECK_FALSE(add(number("1/2"), number("0.1")));
  CHECK_FALSE(add(number("999999999999999999"), number("1")));
}

TEST_CASE("the nearest double is near") {
  CHECK(approximate(number("0.1")) == 0.1);
  CHECK(approximate(number("1/3")) == 1.0 / 3.0);
  CHECK(approximate(number("-1-1/2")) == -1.5);
  CHECK(approximate(number("123456789012345678")) == doctest::Approx(123456789012345678.0).epsilon(1e-15));
}

TEST_CASE("rounding of extreme fractions is exact or refused") {
  std::mt19937_64 random(7);
  const auto below = [&](int limit) { return std::uniform_int_distribution<int>(0, limit - 1)(random); };
  for (int i = 0; i < 100'000; ++i) {
    // Numerators of up to 126 bits over denominators of up to 117 bits: more than any unit needs.
    UInt128 top = 0, bottom = 0;
    for (int word = 0; word < 2; ++word) {
      top = (top << 64) | random();
      bottom = (bottom << 64) | random();
    }
    top >>= 2 + below(124);
    bottom = (bottom >> (11 + below(110))) + 1;
    const bool negative = below(2) == 0;
    const Fraction value{negative ? -static_cast<Int128>(top) : static_cast<Int128>(top), bottom};
    const auto wide = [](UInt128 part) -> mpz_class {
      return mpz_class(std::to_string(static_cast<std::uint64_t>(part >> 64))) * (mpz_class(1) << 64) +
             mpz_class(std::to_string(static_cast<std::uint64_t>(part)));
    };
    mpq_class oracle(wide(top), wide(bottom));
    oracle.canonicalize();
    if (negative) oracle = -oracle;

    const int places = below(16);
    for (const Rounding rounding : {Rounding::nearest, Rounding::up, Rounding::down}) {
      const auto rounded = round_to(value, places, rounding);
      const mpq_class scaled = oracle * test::power_of_ten(places);
      mpz_class floor;
      mpz_fdiv_q(floor.get_mpz_t(), scaled.get_num_mpz_t(), scaled.get_den_mpz_t());
      const bool whole = scaled == floor;
      mpz_class expected = floor;
      if (rounding == Rounding::up && !whole) expected += 1;
      if (rounding == Rounding::nearest) {
        const mpq_class rest = scaled - floor;
        if (rest > mpq_class(1, 2) || (rest == mpq_class(1, 2) && !negative)) expected += 1;
      }
      if (abs(expected) >= test::integer(max_digits)) {
        CHECK_FALSE(rounded);
      } else {
        REQUIRE(rounded);
        CHECK(test::integer(rounded->number.digits) == expected);
        CHECK(rounded->exact == whole);
      }
    }
  }
}
