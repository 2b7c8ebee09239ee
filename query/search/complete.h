// SPDX-License-Identifier: GPL-2.0-or-later
// Type-ahead: what the word being typed may become, most frequent first. Words are offered from the first
// letter; a figure is worth looking for from the third.
//
//   complete("top pl", lexicon, 5)   // plug, plate, plain, ...
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "query/search/lexicon.h"

namespace sheaf {

struct Offer {
  std::string word;
  std::size_t entries = 0;  // whose names hold it; 0 for a machine's name
};

// What the last word of the text may become; none if the text ends in a space. Words with a digit are
// only completed, never corrected.
std::vector<Offer> complete(std::string_view text, Lexicon& lexicon, std::size_t limit);

// The text with its last word completed to the first offer, if that word is no whole one yet and has
// three letters at least: the question to answer while it is being typed.
std::string completed(std::string_view text, Lexicon& lexicon);

}  // namespace sheaf
