// SPDX-License-Identifier: GPL-2.0-or-later
// The word that was probably meant. A guess is offered only when it is close: a wrong hint is worse
// than none.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace sheafc {

// Insertions, deletions, changes and swaps of neighbours that turn one word into the other; more than
// `limit` gives limit + 1. Words longer than 100 bytes are never near.
int edit_distance(std::string_view left, std::string_view right, int limit);

// The one candidate within two edits (one, for words of up to four letters), the first among equals; empty
// if there is none.
std::string_view nearest(std::string_view word, std::span<const std::string_view> candidates);

// "; did you mean 'torque'?" or nothing.
std::string did_you_mean(std::string_view word, std::span<const std::string_view> candidates);

// "a, b or c"
std::string any_of(std::span<const std::string_view> words);

}  // namespace sheafc
