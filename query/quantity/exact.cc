// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/exact.h"

#include <algorithm>
#include <array>
#include <bit>
#include <utility>

namespace sheaf {
namespace {

constexpr std::array<std::int64_t, 19> powers_of_ten = [] {
  std::array<std::int64_t, 19> powers{1};
  for (std::size_t i = 1; i < powers.size(); ++i) powers[i] = powers[i - 1] * 10;
  return powers;
}();

UInt128 magnitude(Int128 value) {
  return value < 0 ? -static_cast<UInt128>(value) : static_cast<UInt128>(value);
}

int bit_width(UInt128 value) {
  const auto high = static_cast<std::uint64_t>(value >> 64);
  return static_cast<int>(high != 0 ? 64 + std::bit_width(high)
                                    : std::bit_width(static_cast<std::uint64_t>(value)));
}

UInt128 greatest_common_divisor(UInt128 a, UInt128 b) {
  while (b != 0) a = std::exchange(b, a % b);
  return a;
}

Fraction in_lowest_terms(const Fraction& value) {
  const UInt128 divisor = greatest_common_divisor(magnitude(value.numerator), value.denominator);
  return {value.numerator / static_cast<Int128>(divisor), value.denominator / divisor};
}

// Compares a/b with c/d for values that are not negative, as continued fractions: whole parts first,
// then the reciprocals of what remains. Nothing is multiplied, so nothing overflows.
std::strong_ordering compare_magnitudes(UInt128 a, UInt128 b, UInt128 c, UInt128 d) {
  while (true) {
    if (const auto order = a / b <=> c / d; order != 0) return order;
    a %= b;
    c %= d;
    if (a == 0 || c == 0) return a <=> c;
    std::swap(a, d);  // a/b < c/d exactly when d/c < b/a
    std::swap(b, c);
  }
}

// How many digits of long division fit above this denominator at a time.
int digits_at_once(UInt128 denominator) { return std::min((128 - bit_width(denominator)) * 301 / 1000, 18); }

}  // namespace

std::int64_t power_of_ten(int exponent) { return powers_of_ten[static_cast<std::size_t>(exponent)]; }

Fraction exact(const Number& number) {
  return {number.digits, static_cast<UInt128>(power_of_ten(number.places)) * number.denominator};
}

Interval rounding_interval(const Number& number) {
  const Fraction value = exact(number);
  if (number.denominator != 1) return {value, value};
  return {{2 * value.numerator - 1, 2 * value.denominator}, {2 * value.numerator + 1, 2 * value.denominator}};
}

Fraction negate(const Fraction& value) { return {-value.numerator, value.denominator}; }

std::optional<Fraction> add(const Fraction& left, const Fraction& right) {
  const UInt128 common = greatest_common_divisor(left.denominator, right.denominator);
  Int128 a = 0, b = 0, sum = 0;
  UInt128 denominator = 0;
  if (__builtin_mul_overflow(left.denominator, right.denominator / common, &denominator) ||
      denominator >= max_denominator ||
      __builtin_mul_overflow(left.numerator, static_cast<Int128>(right.denominator / common), &a) ||
      __builtin_mul_overflow(right.numerator, static_cast<Int128>(left.denominator / common), &b) ||
      __builtin_add_overflow(a, b, &sum)) {
    return std::nullopt;
  }
  return Fraction{sum, denominator};
}

std::optional<Fraction> multiply(const Fraction& left, const Fraction& right) {
  const Fraction a = in_lowest_terms({left.numerator, right.denominator});
  const Fraction b = in_lowest_terms({right.numerator, left.denominator});
  Fraction product;
  if (__builtin_mul_overflow(a.numerator, b.numerator, &product.numerator) ||
      __builtin_mul_overflow(a.denominator, b.denominator, &product.denominator) ||
      product.denominator >= max_denominator) {
    return std::nullopt;
  }
  return product;
}

std::strong_ordering compare(const Fraction& left, const Fraction& right) {
  if ((left.numerator < 0) != (right.numerator < 0)) {
    return left.numerator < 0 ? std::strong_ordering::less : std::strong_ordering::greater;
  }
  const UInt128 a = magnitude(left.numerator), c = magnitude(right.numerator);
  return left.numerator < 0 ? compare_magnitudes(c, right.denominator, a, left.denominator)
                            : compare_magnitudes(a, left.denominator, c, right.denominator);
}

std::optional<Rounded> round_to(const Fraction& value, int places, Rounding rounding) {
  const bool negative = value.numerator < 0;
  const UInt128 whole = magnitude(value.numerator) / value.denominator;
  UInt128 rest = magnitude(value.numerator) % value.denominator;
  if (whole >= static_cast<UInt128>(max_digits)) return std::nullopt;

  std::int64_t digits = static_cast<std::int64_t>(whole);
  for (int left = places; left > 0;) {
    const int step = std::min(left, digits_at_once(value.denominator));
    const std::int64_t power = power_of_ten(step);
    if (digits >= max_digits / power) return std::nullopt;
    rest *= static_cast<UInt128>(power);
    digits = digits * power + static_cast<std::int64_t>(rest / value.denominator);
    rest %= value.denominator;
    left -= step;
  }

  const bool away_from_zero = rounding == Rounding::nearest
                                  ? rest >= value.denominator - rest
                                  : rest != 0 && (rounding == Rounding::up) != negative;
  if (away_from_zero) ++digits;
  if (digits >= max_digits) return std::nullopt;
  return Rounded{{negative ? -digits : digits, static_cast<std::uint8_t>(places), 1}, rest == 0};
}

}  // namespace sheaf
