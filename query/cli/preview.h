// SPDX-License-Identifier: GPL-2.0-or-later
// The answer to a question that is still being typed, in a few short lines.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "query/answer/page.h"
#include "query/search/lexicon.h"

namespace sheaf {

inline constexpr std::size_t preview_lines = 5;

// Of at most preview_lines lines, none wider than the style; empty while there is too little to go by.
std::vector<std::string> preview_of(std::string_view typed, Lexicon& lexicon, const TextStyle& style);

}  // namespace sheaf
