// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/number_text.h"

#include <algorithm>
#include <array>
#include <charconv>

#include "query/quantity/exact.h"
#include "query/quantity/figure.h"

namespace sheaf {
namespace {

std::string text_of(const Number& number, const Typography& typography) {
  std::array<char, number_text_size> buffer;
  Writer writer(buffer, typography);
  writer.put(number);
  return std::string(writer.text());
}

}  // namespace

void Writer::put(std::string_view text) {
  if (text.size() > buffer_.size() - size_) return;
  std::copy(text.begin(), text.end(), buffer_.begin() + static_cast<std::ptrdiff_t>(size_));
  size_ += text.size();
}

void Writer::put(const Number& number) {
  std::uint64_t digits = static_cast<std::uint64_t>(number.digits < 0 ? -number.digits : number.digits);
  if (number.digits < 0) put(typography_.minus);
  if (number.denominator == 1) return put_decimal(digits, number.places);
  const std::uint64_t whole = digits / number.denominator;
  const std::uint64_t part = digits % number.denominator;
  if (whole != 0 && part != 0) {  // a mixed number; "8/4" stays as it was written
    put_whole(whole, typography_.groups);
    put("-");
    digits = part;
  }
  put_whole(digits, false);
  put("/");
  put_whole(number.denominator, false);
}

void Writer::put_whole(std::uint64_t value, bool groups) {
  std::array<char, 20> digits;
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;
  const std::string_view text(digits.data(), static_cast<std::size_t>(end - digits.data()));
  if (!groups || text.size() < 5) return put(text);
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (i > 0 && (text.size() - i) % 3 == 0) put("\u202F");
    put(text.substr(i, 1));
  }
}

void Writer::put_decimal(std::uint64_t digits, int places) {
  const auto power = static_cast<std::uint64_t>(power_of_ten(places));
  put_whole(digits / power, typography_.groups);
  if (places == 0) return;
  put(".");
  std::array<char, 20> decimals;
  std::uint64_t rest = digits % power;
  for (int i = places; i > 0; --i, rest /= 10)
    decimals[static_cast<std::size_t>(i - 1)] = static_cast<char>('0' + rest % 10);
  put({decimals.data(), static_cast<std::size_t>(places)});
}

std::string to_text(const Number& number) { return text_of(number, as_typed); }

std::string shown(const Number& number) { return text_of(number, as_shown); }

}  // namespace sheaf
