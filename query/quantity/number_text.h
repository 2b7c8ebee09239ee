// SPDX-License-Identifier: GPL-2.0-or-later
// Writing numbers and figures into a buffer of fixed size.
#pragma once

#include <span>
#include <string_view>

#include "query/quantity/number.h"

namespace sheaf {

// How a text is set: as it is typed in a sheet, or as an answer shows it.
struct Typography {
  std::string_view minus, range, space;
  bool groups = false;  // a narrow space between groups of three digits, from five digits on
};
inline constexpr Typography as_typed{"-", "..", " ", false};
inline constexpr Typography as_shown{"\u2212", "\u2013", "\u00A0", true};

// Appends to a buffer; what does not fit is dropped (the buffers of this folder always suffice).
class Writer {
 public:
  Writer(std::span<char> buffer, const Typography& typography) : buffer_(buffer), typography_(typography) {}

  const Typography& typography() const { return typography_; }
  std::string_view text() const { return {buffer_.data(), size_}; }

  void put(std::string_view text);
  void put(const Number& number);

 private:
  void put_whole(std::uint64_t value, bool groups);
  void put_decimal(std::uint64_t digits, int places);

  std::span<char> buffer_;
  std::size_t size_ = 0;
  const Typography& typography_;
};

// The longest number: a sign, 18 digits, their grouping, a point or a bar.
inline constexpr std::size_t number_text_size = 64;

}  // namespace sheaf
