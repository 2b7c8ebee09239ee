// SPDX-License-Identifier: GPL-2.0-or-later
// Text for people: how wide it is on a terminal, how it wraps, what must never reach the screen.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sheaf {

// Bytes of the UTF-8 sign that starts at `at`; 0 if the byte there starts none.
std::size_t sign_length(std::string_view text, std::size_t at);

// Columns that the UTF-8 text takes on a terminal. Combining marks take none, wide signs two; a byte
// that is not UTF-8 takes one.
int display_width(std::string_view text);

// The text without control characters, without invisible signs that turn its direction, and with
// every byte that is not UTF-8 replaced by "?". Line breaks become spaces. Sheets are data: what they
// say must not steer a terminal.
std::string clean(std::string_view text);

// For a terminal that cannot show UTF-8: "28 N·m" -> "28 N.m", "±" -> "+/-", "41 × 54" -> "41 x 54".
// Signs without a plain form become "?".
std::string plain_ascii(std::string_view text);

// The text in lines of at most `width` columns, broken at spaces (never at a no-break space); a word
// that is longer than a line is cut. At least one line.
std::vector<std::string> wrap(std::string_view text, int width);

// The text and as many spaces as it needs to be `width` columns wide.
std::string padded(std::string_view text, int width);

std::string joined(const std::vector<std::string>& parts, std::string_view between);

}  // namespace sheaf
