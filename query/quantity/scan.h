// SPDX-License-Identifier: GPL-2.0-or-later
// A place in a text, and the small steps that the readers of numbers, units and figures share.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "query/quantity/number.h"
#include "query/quantity/result.h"

namespace sheaf {

// What is read at a time; more is refused, so that no text can cost more than it is worth.
inline constexpr std::size_t longest_text = 1000;

inline bool is_digit(char c) { return c >= '0' && c <= '9'; }
inline bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
// An ASCII character that no space, sign or mark begins with: most are, and need no closer look.
inline bool is_plain(char c) { return is_digit(c) || is_letter(c); }
inline char to_lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

// The bytes of a space at the front of the text: ASCII space, tab, no-break and thin spaces; else 0.
std::size_t space_length(std::string_view text);

struct Scanner {
  std::string_view text;
  std::size_t at = 0;

  bool done() const { return at >= text.size(); }
  char peek(std::size_t ahead = 0) const { return at + ahead < text.size() ? text[at + ahead] : '\0'; }
  std::string_view rest() const { return text.substr(at); }

  void skip_spaces();
  // Steps over the literal if the text goes on with it.
  bool take(std::string_view literal);
  // Steps over the words, in any case and however far apart, if no letter or digit follows them.
  bool take_word(std::string_view word);

  Failure failure_at(std::size_t from, std::size_t length, std::string message) const {
    return {std::move(message), static_cast<int>(from), static_cast<int>(length)};
  }
  // Marks what was read since `from`, or one character if nothing was.
  Failure failure_since(std::size_t from, std::string message) const;
};

// Reads the number that the text goes on with and stops behind it.
Result<Number> scan_number(Scanner& scanner, Input input);

}  // namespace sheaf
