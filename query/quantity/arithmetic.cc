// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/arithmetic.h"

#include <algorithm>
#include <numeric>

#include "query/quantity/exact.h"

namespace sheaf {
namespace {

Number negated(Number number) {
  number.digits = -number.digits;
  return number;
}

// What the digits are multiplied by to stand over so many places and this denominator.
std::int64_t expansion(const Number& number, int places, int denominator) {
  return power_of_ten(places - number.places) * (denominator / number.denominator);
}

std::optional<Number> scaled(const Number& number, std::int64_t hundredths, int more_places) {
  std::int64_t digits = 0;
  if (__builtin_mul_overflow(number.digits, hundredths, &digits)) return std::nullopt;
  int places = number.places + more_places;
  while (places > number.places && digits % 10 == 0) {
    digits /= 10;
    --places;
  }
  if (places > max_places || digits <= -max_digits || digits >= max_digits) return std::nullopt;
  return Number{digits, static_cast<std::uint8_t>(places), 1};
}

std::optional<Number> by_per_cent(const Number& number, const Number& per_cent, int sign) {
  if (number.denominator != 1 || per_cent.denominator != 1 || per_cent.places > 6) return std::nullopt;
  const std::int64_t whole = 100 * power_of_ten(per_cent.places);
  if (per_cent.digits < 0 || per_cent.digits > whole) return std::nullopt;
  return scaled(number, whole + sign * per_cent.digits, per_cent.places + 2);
}

}  // namespace

std::optional<Number> add(const Number& left, const Number& right) {
  const int places = std::max(left.places, right.places);
  const int denominator = std::lcm(static_cast<int>(left.denominator), static_cast<int>(right.denominator));
  if (denominator > 1024 || (denominator > 1 && places > 0)) return std::nullopt;
  std::int64_t a = 0, b = 0, sum = 0;
  if (__builtin_mul_overflow(left.digits, expansion(left, places, denominator), &a) ||
      __builtin_mul_overflow(right.digits, expansion(right, places, denominator), &b) ||
      __builtin_add_overflow(a, b, &sum) || sum <= -max_digits || sum >= max_digits) {
    return std::nullopt;
  }
  return Number{sum, static_cast<std::uint8_t>(places), static_cast<std::uint16_t>(denominator)};
}

std::optional<Number> subtract(const Number& left, const Number& right) { return add(left, negated(right)); }

std::optional<Number> more_by_per_cent(const Number& number, const Number& per_cent) {
  return by_per_cent(number, per_cent, number.digits < 0 ? -1 : 1);
}

std::optional<Number> less_by_per_cent(const Number& number, const Number& per_cent) {
  return by_per_cent(number, per_cent, number.digits < 0 ? 1 : -1);
}

}  // namespace sheaf
