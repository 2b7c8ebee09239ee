// SPDX-License-Identifier: GPL-2.0-or-later
// The words around a figure: that they are words at all, and their plain form.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "query/quantity/result.h"

namespace sheaf {

// Refuses what no statement holds: more than 1000 bytes, control characters, bytes that are not UTF-8.
std::optional<Failure> check_text(std::string_view text);

// Letters, digits and letters with accents begin a word; signs such as ± and – do not.
bool begins_word(std::string_view text);

// The words with one space between them and none around them.
std::string with_single_spaces(std::string_view text);

}  // namespace sheaf
