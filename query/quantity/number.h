// SPDX-License-Identifier: GPL-2.0-or-later
// A number exactly as somebody wrote it: "25.0" keeps its zero, "1-1/2" stays a fraction.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "query/quantity/result.h"

namespace sheaf {

// Where a text comes from decides how much is forgiven: a sheet is read strictly (no decimal comma,
// no ambiguous unit), a prompt takes what people type.
enum class Input { sheet, prompt };

// value = digits / (denominator · 10^places). A decimal has denominator 1; a fraction or mixed
// number has places 0 and the denominator as written. |digits| < 10^18, places <= 15,
// 1 <= denominator <= 1024.
struct Number {
  std::int64_t digits = 0;
  std::uint8_t places = 0;
  std::uint16_t denominator = 1;

  friend bool operator==(const Number&, const Number&) = default;  // as written: 25 is not 25.0
};

// "28", "-40", "25.0", "1 200", "5/16", "1-1/2", "1 1/2"; at a prompt also "9,5".
// Fails on an exponent, nan, inf, hex, two points, a bare point, too many digits.
Result<Number> parse_number(std::string_view text, Input input);

// As written: 25.0 -> "25.0", 1-1/2 -> "1-1/2", -40 -> "-40".
std::string to_text(const Number& number);

// Compares values, not spellings: 25 equals 25.0. Negative, zero or positive, exactly.
int compare(const Number& left, const Number& right);

// The nearest double, for searching and drawing; never for a figure that is shown.
double approximate(const Number& number);

}  // namespace sheaf
