// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/scan.h"

#include <algorithm>
#include <array>

namespace sheaf {

std::size_t space_length(std::string_view text) {
  if (text.empty() || is_plain(text.front())) return 0;
  constexpr std::array<std::string_view, 5> spaces{" ", "\t", "\u00A0", "\u2009", "\u202F"};
  for (const std::string_view space : spaces) {
    if (text.starts_with(space)) return space.size();
  }
  return 0;
}

void Scanner::skip_spaces() {
  while (const std::size_t length = space_length(rest())) at += length;
}

bool Scanner::take(std::string_view literal) {
  if (!rest().starts_with(literal)) return false;
  at += literal.size();
  return true;
}

bool Scanner::take_word(std::string_view word) {
  Scanner ahead = *this;
  for (const char c : word) {
    const std::size_t before = ahead.at;
    if (c == ' ') {
      ahead.skip_spaces();
    } else if (to_lower(ahead.peek()) == c) {
      ++ahead.at;
    }
    if (ahead.at == before) return false;
  }
  if (is_letter(ahead.peek()) || is_digit(ahead.peek())) return false;
  at = ahead.at;
  return true;
}

Failure Scanner::failure_since(std::size_t from, std::string message) const {
  return failure_at(from, std::max<std::size_t>(at - from, 1), std::move(message));
}

}  // namespace sheaf
