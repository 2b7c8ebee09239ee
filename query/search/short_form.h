// SPDX-License-Identifier: GPL-2.0-or-later
// Short forms that no table lists: "hd" of "head", "camspkt" of "cam sprocket". Internal to search.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sheaf {

// What is left of it without its vowels.
std::string consonants_of(std::string_view word);

// Whether it has the first letter of a word and some others in order.
bool shortens(std::string_view brief, std::string_view whole);

// The places, among the words of a name, of those that the folded word is short for: of one whose first
// letter and some others in order it has, or of two that it joins, each whole, begun or so shortened. None if
// it is short for none.
std::vector<std::size_t> short_for(std::string_view word, const std::vector<std::string>& name);

}  // namespace sheaf
