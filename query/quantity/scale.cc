// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/scale.h"

#include <array>
#include <cassert>
#include <numeric>

#include "query/quantity/unit_table.h"

namespace sheaf {
namespace {

constexpr Fraction divide(Rational a, Rational b) {
  const std::int64_t over = std::gcd(a.numerator, b.numerator),
                     under = std::gcd(a.denominator, b.denominator);
  if (over == 0) return {0, 1};
  return {static_cast<Int128>(a.numerator / over) * (b.denominator / under),
          static_cast<UInt128>(a.denominator / under) * static_cast<UInt128>(b.numerator / over)};
}

// The offsets are of temperatures only and small.
constexpr Rational difference(Rational a, Rational b) {
  const std::int64_t numerator = a.numerator * b.denominator - b.numerator * a.denominator;
  const std::int64_t denominator = a.denominator * b.denominator;
  const std::int64_t common = std::gcd(numerator, denominator);
  return {numerator / common, denominator / common};
}

constexpr int fewest_places(Fraction factor) {
  const UInt128 numerator = static_cast<UInt128>(factor.numerator);
  int places = 0;
  UInt128 scaled = numerator;
  while (scaled < factor.denominator) {
    scaled *= 10;
    ++places;
  }
  UInt128 step = factor.denominator * 10;
  while (places <= 0 && step <= numerator) {
    step *= 10;
    --places;
  }
  return places;
}

constexpr Scale between(const Unit& from, const Unit& to) {
  Scale scale;
  scale.factor = divide(from.factor, to.factor);
  scale.shift = divide(difference(from.offset, to.offset), to.factor);
  scale.places = fewest_places(scale.factor);
  const Fraction root_of_ten_times{scale.factor.numerator * 3162, scale.factor.denominator * 1000};
  scale.nearest_places = fewest_places(root_of_ten_times);
  // Two rounded sizes may still be in an exact proportion: 1 year is 12 months.
  scale.exact = (from.exact && to.exact) || (!from.exact && !to.exact);
  return scale;
}

// Rows of one dimension stand together, so the scales of each make a square.
struct Square {
  std::size_t first_row = 0, rows = 0, first_scale = 0;
};
constexpr auto squares = [] {
  std::array<Square, table::dimension_count> result{};
  for (std::size_t i = 0; i < table::unit_count; ++i) {
    Square& own = result[static_cast<std::size_t>(table::units[i].dimension)];
    if (own.rows == 0) own.first_row = i;
    ++own.rows;
  }
  std::size_t scales = 0;
  for (Square& own : result) {
    own.first_scale = scales;
    scales += own.rows * own.rows;
  }
  return result;
}();
constexpr std::size_t scale_count = squares.back().first_scale + squares.back().rows * squares.back().rows;

constexpr auto scales = [] {
  std::array<Scale, scale_count> result{};
  std::size_t next = 0;
  for (const Square& own : squares) {
    for (std::size_t from = 0; from < own.rows; ++from) {
      for (std::size_t to = 0; to < own.rows; ++to) {
        result[next++] = between(table::units[own.first_row + from], table::units[own.first_row + to]);
      }
    }
  }
  return result;
}();

}  // namespace

const Scale& scale_between(const Unit& from, const Unit& to) {
  assert(from.dimension == to.dimension);
  const Square& own = squares[static_cast<std::size_t>(from.dimension)];
  const std::size_t row = static_cast<std::size_t>(&from - table::units) - own.first_row;
  const std::size_t column = static_cast<std::size_t>(&to - table::units) - own.first_row;
  return scales[own.first_scale + row * own.rows + column];
}

std::optional<Fraction> apply(const Scale& scale, const Fraction& value) {
  Fraction product;
  if (__builtin_mul_overflow(value.numerator, scale.factor.numerator, &product.numerator) ||
      __builtin_mul_overflow(value.denominator, scale.factor.denominator, &product.denominator) ||
      product.denominator >= max_denominator) {
    return std::nullopt;
  }
  return scale.shift.numerator == 0 ? product : add(product, scale.shift);
}

}  // namespace sheaf
