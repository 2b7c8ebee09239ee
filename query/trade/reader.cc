// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/reader.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <utility>

namespace sheaf {
namespace {

// What a sign, as UTF-8, is read as. Longer signs stand before their beginnings.
constexpr std::pair<std::string_view, std::string_view> same_signs[] = {
    {"×", "x"},   {"✕", "x"},   {"⨯", "x"},   {"∗", "x"},   {"*", "x"},      {"‐", "-"},      {"‑", "-"},
    {"‒", "-"},   {"–", "-"},   {"—", "-"},   {"−", "-"},   {"″", "\""},     {"”", "\""},     {"“", "\""},
    {"''", "\""}, {"⌀", "ø"},   {"Ø", "ø"},   {"∅", "ø"},   {"\u00a0", " "}, {"\u2009", " "}, {"\u202f", " "},
    {"\t", " "},  {"½", "1/2"}, {"¼", "1/4"}, {"¾", "3/4"}, {"⅛", "1/8"},    {"⅜", "3/8"},    {"⅝", "5/8"},
    {"⅞", "7/8"}, {"⁄", "/"},   {"№", "#"},
};

bool is_digit(char sign) { return sign >= '0' && sign <= '9'; }
bool is_letter(char sign) { return (sign >= 'a' && sign <= 'z') || static_cast<unsigned char>(sign) >= 0x80; }

// The first sign of the text, and what it is read as. Plain letters and digits, which are nearly all,
// are not looked up.
std::pair<std::string_view, std::string_view> sign_at(std::string_view text) {
  const auto first = static_cast<unsigned char>(text.front());
  const bool plain_sign = first < 0x80 && first != '*' && first != '\'' && first != '\t';
  if (!plain_sign) {
    for (const auto& [written, same] : same_signs) {
      if (text.starts_with(written)) return {written, same};
    }
  }
  return {text.substr(0, 1), text.substr(0, 1)};
}

}  // namespace

Reader::Reader(std::string_view text) : text_(text) { fold(text.substr(0, longest)); }

void Reader::fold(std::string_view text) {
  signs_.reserve(text.size());
  source_at_.reserve(text.size() + 1);
  for (std::size_t at = 0; at < text.size();) {
    const auto [written, read_as] = sign_at(text.substr(at));
    if (read_as.size() == 3 && !signs_.empty() && is_digit(signs_.back())) {  // 1½ is 1-1/2
      signs_ += '-';
      source_at_.push_back(static_cast<int>(at));
    }
    for (char letter : read_as) {
      signs_ += letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
      source_at_.push_back(static_cast<int>(at));
    }
    at += written.size();
  }
  source_at_.push_back(static_cast<int>(text.size()));
}

bool Reader::at(std::string_view signs) const { return rest().starts_with(signs); }

char Reader::peek(std::size_t ahead) const {
  return next_ + ahead < signs_.size() ? signs_[next_ + ahead] : '\0';
}

bool Reader::at_digit(std::size_t ahead) const { return is_digit(peek(ahead)); }

bool Reader::at_word_end() const { return !is_letter(peek()) && !is_digit(peek()); }

void Reader::skip_spaces() {
  while (peek() == ' ') ++next_;
}

bool Reader::take(std::string_view signs) {
  if (!at(signs)) return false;
  next_ += signs.size();
  return true;
}

bool Reader::take_word(std::string_view word) {
  const std::size_t start = next_;
  if (take(word) && at_word_end()) return true;
  next_ = start;
  return false;
}

std::optional<int> Reader::take_integer() {
  std::size_t end = next_;
  int value = 0;
  for (; end < signs_.size() && is_digit(signs_[end]); ++end) {
    if (end - next_ == 6) return std::nullopt;
    value = value * 10 + (signs_[end] - '0');
  }
  if (end == next_) return std::nullopt;
  next_ = end;
  return value;
}

Result<Number> Reader::take_decimal(Input input) {
  std::size_t end = next_;
  while (end < signs_.size() && is_digit(signs_[end])) ++end;
  const bool has_point = end > next_ && end + 1 < signs_.size() &&
                         (signs_[end] == '.' || signs_[end] == ',') && is_digit(signs_[end + 1]);
  if (has_point) {
    ++end;
    while (end < signs_.size() && is_digit(signs_[end])) ++end;
  }
  if (end == next_) return failure("a number is missing");
  auto number = parse_number(std::string_view(signs_).substr(next_, end - next_), input);
  if (!number) return Failure{number.failure().message, source_offset(), source_at_[end] - source_offset()};
  next_ = end;
  return number;
}

Result<Number> Reader::take_mixed(Input input) {
  const std::size_t start = next_;
  std::optional<int> whole = take_integer();
  if (!whole) return take_decimal(input);
  int top = 0;
  std::optional<int> bottom;
  if (take("/")) {
    top = std::exchange(*whole, 0);
    bottom = take_integer();
  } else if (take("-") || take(" ")) {
    const std::optional<int> numerator = take_integer();
    if (numerator && take("/")) {
      top = *numerator;
      bottom = take_integer();
    }
  }
  const bool is_whole = bottom && *bottom > 0 && top % *bottom == 0;  // "10/10" are two heights, or nothing
  if (!bottom || is_whole) {                                          // not a fraction after all
    next_ = start;
    return take_decimal(input);
  }
  if (*bottom < 2 || *bottom > 1024) {
    next_ = start;
    return failure("the lower number of a fraction is between 2 and 1024");
  }
  if (*whole > 0 && top >= *bottom) {
    next_ = start;
    return failure("the fraction behind a whole number is less than 1");
  }
  return Number{std::int64_t{*whole} * *bottom + top, 0, static_cast<std::uint16_t>(*bottom)};
}

std::string_view Reader::source_since(std::size_t mark) const {
  const auto begin = static_cast<std::size_t>(source_at_[mark]);
  return text_.substr(begin, static_cast<std::size_t>(source_offset()) - begin);
}

Failure Reader::failure(std::string message) const {
  return Failure{std::move(message), source_offset(), static_cast<int>(text_.size()) - source_offset()};
}

std::string lower_case(std::string_view text) {
  std::string result(text);
  for (char& letter : result) {
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  }
  return result;
}

std::string upper_case(std::string_view text) {
  std::string result(text);
  for (char& letter : result) {
    if (letter >= 'a' && letter <= 'z') letter = static_cast<char>(letter - 'a' + 'A');
  }
  return result;
}

std::string plain(const Number& number, Fractions fractions) {
  std::int64_t digits = number.digits;
  std::int64_t below = number.denominator;
  int places = number.places;
  const std::int64_t common = std::gcd(digits, below);
  if (common > 1) digits /= common, below /= common;
  const auto power_of_two = [](std::int64_t n) { return (n & (n - 1)) == 0; };
  if (below > 1 && fractions == Fractions::as_decimal && power_of_two(below) && digits < 1'000'000 &&
      digits > -1'000'000) {
    for (; below > 1; below /= 2, ++places) digits *= 5;  // n/2 is 5n/10
  }
  if (below > 1) return to_text(Number{digits, 0, static_cast<std::uint16_t>(below)});
  for (; places > 0 && digits % 10 == 0; --places) digits /= 10;
  return to_text(Number{digits, static_cast<std::uint8_t>(places), 1});
}

}  // namespace sheaf
