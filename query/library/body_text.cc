// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/body_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <system_error>

namespace sheaf {
namespace {

constexpr std::string_view digits = "0123456789abcdef";
constexpr std::string_view control_escape = "\\u00";  // and two digits

bool is_plain(char byte) { return static_cast<unsigned char>(byte) >= 0x20 && byte != '"' && byte != '\\'; }

template <typename Number>
std::string to_text(Number number) {
  std::array<char, 32> text{};  // enough for every number, in the fewest digits that read back the same
  return {text.data(), std::to_chars(text.data(), text.data() + text.size(), number).ptr};
}

}  // namespace

void BodyWriter::text(std::string_view text) {
  bytes_ += '"';
  for (const char byte : text) {
    if (is_plain(byte)) {
      bytes_ += byte;
    } else if (byte == '"' || byte == '\\') {
      bytes_ += {'\\', byte};
    } else {
      bytes_.append(control_escape) += {digits[static_cast<unsigned char>(byte) >> 4], digits[byte & 15]};
    }
  }
  bytes_ += '"';
}

void BodyWriter::number(std::int64_t number) { bytes_ += to_text(number); }

void BodyWriter::value(const std::optional<double>& number) {
  bytes_ += number && std::isfinite(*number) ? to_text(*number) : "null";
}

void BodyReader::expect(char sign) {
  if (is_next(sign)) {
    rest_.remove_prefix(1);
  } else {
    is_sound_ = false;
  }
}

void BodyReader::text(std::string& text) {
  text.clear();
  expect('"');
  while (is_sound_) {
    const auto plain =
        static_cast<std::size_t>(std::find_if_not(rest_.begin(), rest_.end(), is_plain) - rest_.begin());
    text.append(rest_.substr(0, plain));
    rest_.remove_prefix(plain);
    if (!is_next('\\')) return expect('"');
    if (rest_.size() >= 6 && rest_.starts_with(control_escape)) {
      const auto high = digits.find(rest_[4]), low = digits.find(rest_[5]);
      if (high > 1 || low > 15) break;
      text += static_cast<char>(high << 4 | low);
      rest_.remove_prefix(6);
    } else {
      if (rest_.size() < 2 || (rest_[1] != '"' && rest_[1] != '\\')) break;
      text += rest_[1];
      rest_.remove_prefix(2);
    }
  }
  is_sound_ = false;
}

std::int64_t BodyReader::number() {
  std::int64_t number = 0;
  const auto [end, error] = std::from_chars(rest_.data(), rest_.data() + rest_.size(), number);
  if (error != std::errc{}) is_sound_ = false;
  rest_.remove_prefix(static_cast<std::size_t>(end - rest_.data()));
  return number;
}

void BodyReader::value(std::optional<double>& number) {
  constexpr std::string_view none = "null";
  if (rest_.starts_with(none)) return rest_.remove_prefix(none.size());
  double read = 0;
  const auto [end, error] = std::from_chars(rest_.data(), rest_.data() + rest_.size(), read);
  if (error != std::errc{} || !std::isfinite(read)) is_sound_ = false;
  rest_.remove_prefix(static_cast<std::size_t>(end - rest_.data()));
  number = read;
}

}  // namespace sheaf
