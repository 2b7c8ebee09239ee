// SPDX-License-Identifier: GPL-2.0-or-later
// The same numbers as fractions of GMP: unbounded, and sharing no code with what they check.
#pragma once

#include <gmpxx.h>

#include <string>

#include "query/quantity/figure.h"

namespace sheaf::test {

inline mpz_class integer(std::int64_t value) { return mpz_class(std::to_string(value)); }

inline mpq_class rational(std::int64_t numerator, std::int64_t denominator = 1) {
  mpq_class value(integer(numerator), integer(denominator));
  value.canonicalize();
  return value;
}

inline mpq_class rational(Rational value) { return rational(value.numerator, value.denominator); }

inline mpq_class power_of_ten(int exponent) {
  mpz_class power;
  mpz_ui_pow_ui(power.get_mpz_t(), 10, static_cast<unsigned long>(exponent < 0 ? -exponent : exponent));
  return exponent < 0 ? mpq_class(1) / power : mpq_class(power);
}

inline mpq_class rational(const Number& number) {
  return rational(number.digits, number.denominator) * power_of_ten(-number.places);
}

// The value in another unit, from the definitions of both.
inline mpq_class converted(const mpq_class& value, const Unit& from, const Unit& to) {
  return (value * rational(from.factor) + rational(from.offset) - rational(to.offset)) / rational(to.factor);
}

}  // namespace sheaf::test
