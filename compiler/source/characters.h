// SPDX-License-Identifier: GPL-2.0-or-later
// The first look at a sheet: are these bytes text that shows what it says? A YAML reader lets through
// bytes that are not UTF-8, NULs, and characters nobody can see; here they are refused, each where it is.
#pragma once

#include <string>
#include <string_view>

#include "compiler/source/diagnostics.h"

namespace sheafc {

// Reports at most one fault a line and max_character_faults in all; true if there was none.
inline constexpr int max_character_faults = 50;
bool check_characters(std::string_view file, std::string_view bytes, Diagnostics& sink);

// Why a character may not stand in a sheet ("control character U+0007"), or empty text. Also asked of
// characters that an escape like "\x07" would make.
struct Refusal {
  std::string_view rule;
  std::string message;
};
Refusal refusal_of(char32_t code);

}  // namespace sheafc
