// SPDX-License-Identifier: GPL-2.0-or-later
// What a person typed, as words that know where they stood. Nothing typed is an error here: signs that
// mean nothing part words, and what is too long is cut.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sheaf {

inline constexpr std::size_t longest_question = 600;  // bytes; what lies beyond is not read
inline constexpr std::size_t most_words = 48;

// A word between spaces, as typed and as the index knows words: "O-ring?" is {"o", "ring"}.
struct Token {
  std::string typed;               // without brackets, quotes and the full stop around it
  std::vector<std::string> words;  // folded; none if it holds only signs
  std::size_t begin = 0, end = 0;  // bytes of the question that it takes
  bool has_digit = false;
};

struct Question {
  std::string text;  // every space a plain one
  std::vector<Token> tokens;

  std::string_view from(std::size_t token) const;                 // the text from there to its end
  std::string typed(std::size_t first, std::size_t count) const;  // tokens as typed
  // Number of tokens, from `first` on, that begin before `bytes` bytes of from(first) have passed.
  std::size_t tokens_within(std::size_t first, std::size_t bytes) const;
};

Question question_of(std::string_view text);

}  // namespace sheaf
