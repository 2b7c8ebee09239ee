// SPDX-License-Identifier: GPL-2.0-or-later
// UTF-8, character by character, and how much room a character takes on a terminal.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace sheaf {

inline constexpr char32_t not_utf8 = 0xFFFFFFFF;

struct Character {
  char32_t code;       // not_utf8 for a byte that starts no well-formed sequence
  std::size_t length;  // in bytes, at least 1
};

// The character that starts at `at`, which must be inside `bytes`.
Character character_at(std::string_view bytes, std::size_t at);

void append_utf8(std::string& out, char32_t code);

// Terminal columns: 0 for a combining mark, 2 for a wide character, otherwise 1.
int display_width(char32_t code);

// How many characters; a byte that is not UTF-8 counts as one.
int count_characters(std::string_view bytes);

// For a terminal: whatever could steer it or is no character becomes U+FFFD, a tab one space.
std::string printable(std::string_view text);

}  // namespace sheaf
