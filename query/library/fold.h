// SPDX-License-Identifier: GPL-2.0-or-later
// Words as the index keeps them and as a question is read: both sides fold through here, so that case,
// accents and the many signs for one thing never cost an answer.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sheaf {

// Lower case; Latin letters lose their accents (é -> e, ö -> o, ł -> l), ß is ss, æ is ae, ligatures
// fall apart; every dash is -, every space a space, × is x, µ is u, decimal middle dots are spaces;
// apostrophes and control characters vanish. Letters of other scripts stay as they are. Bytes that are
// not UTF-8 become spaces. Never longer than three times the text.
std::string fold(std::string_view text);

// The words of a folded text: runs of letters and digits. A point or comma between digits belongs to
// the word, as a point ("9,5" -> "9.5"). Everything else parts words: "o-ring" is "o", "ring".
std::vector<std::string> words_of(std::string_view folded);

// The words of a text under each way in which it may be typed, as written first: German umlauts spelt
// out where a keyboard lacks them ("gabelol", "gabeloel"), hyphens left out ("o", "ring"; "oring").
std::vector<std::vector<std::string>> spellings_of(std::string_view text);

// Letters and digits alone, for codes and part numbers: "HK-40732-20" -> "hk4073220",
// "SAE 10W-40" -> "sae10w40", "DOT 5.1" -> "dot5.1" (a point between digits stays).
std::string squeeze(std::string_view text);

// The English stem of a folded word (Snowball): "nuts" -> "nut". A word with a digit is its own stem.
std::string stem_of(std::string_view word);

}  // namespace sheaf
