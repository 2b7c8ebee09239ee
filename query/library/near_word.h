// SPDX-License-Identifier: GPL-2.0-or-later
// The word that was probably meant, among few. A guess is offered only when it is close.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace sheaf {

// Letters too many, too few or others, and neighbours swapped, that part the two words. Words longer than
// 60 bytes are far from everything.
int slips_between(std::string_view left, std::string_view right);

// The first of the nearest candidates within two slips (one, for words of up to four letters): a letter
// too many, too few, another, or two neighbours swapped. Empty if there is none.
std::string_view near_word(std::string_view word, std::span<const std::string_view> candidates);

}  // namespace sheaf
