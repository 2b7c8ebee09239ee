// SPDX-License-Identifier: GPL-2.0-or-later
// Digits of ASCII in a word. Internal to search.
#pragma once

#include <string_view>

namespace sheaf {

inline constexpr std::string_view digit_signs = "0123456789";

inline bool has_digit(std::string_view word) {
  return word.find_first_of(digit_signs) != std::string_view::npos;
}

// Of the empty word too.
inline bool is_digits(std::string_view word) {
  return word.find_first_not_of(digit_signs) == std::string_view::npos;
}

}  // namespace sheaf
