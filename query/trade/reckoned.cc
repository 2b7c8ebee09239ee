// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/reckoned.h"

#include <array>
#include <charconv>
#include <cmath>

namespace sheaf {
namespace {

constexpr double most = 1e15;
constexpr double least = 1e-6;

std::int64_t power_of_ten(int exponent) {
  std::int64_t power = 1;
  for (; exponent > 0; --exponent) power *= 10;
  return power;
}

// "d.ddde±xx" as its digits without the point, and its exponent.
struct Scientific {
  std::int64_t digits = 0;
  int exponent = 0;
};
Scientific scientific(double value, int digits) {
  std::array<char, 40> text{};
  const auto end =
      std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::scientific, digits - 1)
          .ptr;
  Scientific result;
  const char* at = text.data();
  for (; *at != 'e'; ++at) {
    if (*at >= '0' && *at <= '9') result.digits = result.digits * 10 + (*at - '0');
  }
  ++at;
  if (*at == '+') ++at;  // from_chars takes no plus
  std::from_chars(at, end, result.exponent);
  return result;
}

}  // namespace

Result<Number> reckoned_number(double value, int digits) {
  if (digits < 1 || digits > 9) return Failure{"a reckoned figure has 1 to 9 digits"};
  if (value == 0) return Number{0, 0, 1};
  if (auto failure = outside_range({{"reckoned value", std::abs(value), {least, most}, ""}})) return *failure;
  const Scientific parts = scientific(std::abs(value), digits);
  const int places = digits - 1 - parts.exponent;
  Number number{parts.digits, 0, 1};
  if (places > 0)
    number.places = static_cast<std::uint8_t>(places);
  else
    number.digits *= power_of_ten(-places);
  if (value < 0) number.digits = -number.digits;
  return number;
}

Result<Figure> reckoned(double value, const Unit& unit, int digits) {
  const auto number = reckoned_number(value, digits);
  if (!number) return number.failure();
  Figure figure;
  figure.nominal = *number;
  figure.unit = &unit;
  return figure;
}

Result<Figure> reckoned(Band band, const Unit& unit, int digits) {
  const auto low = reckoned_number(band.least, digits);
  const auto high = reckoned_number(band.most, digits);
  if (!low) return low.failure();
  if (!high) return high.failure();
  if (compare(*low, *high) == 0) return reckoned(band.least, unit, digits);
  Figure figure;
  figure.form = Form::range;
  figure.least = *low;
  figure.most = *high;
  figure.unit = &unit;
  return figure;
}

}  // namespace sheaf
