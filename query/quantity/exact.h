// SPDX-License-Identifier: GPL-2.0-or-later
// Exact fractions of 128-bit integers, and their one rounding: what stands under every conversion.
//
// A figure is rounded once, from the exact value, so that no digit it shows is a rounding of a rounding.
// What does not fit is refused (nullopt), never wrapped or approximated.
#pragma once

#include <compare>
#include <optional>

#include "query/quantity/number.h"

namespace sheaf {

__extension__ typedef __int128 Int128;
__extension__ typedef unsigned __int128 UInt128;

// numerator / denominator, not necessarily in lowest terms; 0 < denominator < max_denominator, which
// leaves room for at least three digits of long division.
struct Fraction {
  Int128 numerator = 0;
  UInt128 denominator = 1;
};

inline constexpr UInt128 max_denominator = UInt128{1} << 118;
inline constexpr std::int64_t max_digits = 1'000'000'000'000'000'000;  // |Number::digits| is less
inline constexpr int max_places = 15;

// 10^exponent, 0 <= exponent <= 18.
std::int64_t power_of_ten(int exponent);

Fraction exact(const Number& number);

// All values that round to the number as written: half a unit of its last digit to either side. A fraction
// ("5/16") is taken as exact.
struct Interval {
  Fraction least, most;
};
Interval rounding_interval(const Number& number);

std::optional<Fraction> add(const Fraction& left, const Fraction& right);
std::optional<Fraction> multiply(const Fraction& left, const Fraction& right);
Fraction negate(const Fraction& value);

std::strong_ordering compare(const Fraction& left, const Fraction& right);

// nearest: to the nearest, a half away from zero; up and down: towards plus and minus infinity.
enum class Rounding { nearest, up, down };

struct Rounded {
  Number number;
  bool exact = false;  // nothing was cut off
};

// The value with so many decimal places (0..15); nullopt if its digits do not fit a Number.
std::optional<Rounded> round_to(const Fraction& value, int places, Rounding rounding);

}  // namespace sheaf
