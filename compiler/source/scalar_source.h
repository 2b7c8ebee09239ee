// SPDX-License-Identifier: GPL-2.0-or-later
// A scalar read a second time, from its own bytes, by the rules of YAML 1.2 (chapters 7.3 and 8.1). It
// gives what a parser's events lack, the place where the scalar ends, and it is the check on the parser:
// where the two readings differ, the sheet is refused rather than believed.
//
// All positions are bytes from the start of `bytes`, which must end in a line feed.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace sheafc {

struct ScalarSource {
  std::size_t end = 0;         // one past the last byte: after the closing quote, the last letter, or
                               // the line feed of a block's last line
  std::string_view literal;    // the text where it stands in the bytes as it is; its data() is null if
                               // it does not (escapes, several lines)
  std::string text;            // otherwise, the text
  int least_indent = 1 << 30;  // of the lines after the first; blank ones do not count
  std::size_t least_line = 0;  // where the text of that line starts
  bool closed = true;          // false: the closing quote is missing
  std::size_t bad_escape = 0;  // where an escape stands that YAML does not know or a sheet may not hold

  std::string_view value() const { return literal.data() ? literal : std::string_view(text); }
};

// `at` is the opening quote.
ScalarSource read_quoted(std::string_view bytes, std::size_t at);

// `at` is the first byte. A plain scalar's end depends on where it stands, so the parser's text leads:
// `closed` is false if the bytes, with line breaks folded, do not spell it.
ScalarSource read_plain(std::string_view bytes, std::size_t at, std::string_view text);

// `at` is the | or >, and `parent_indent` the column (from 0) of the block collection around it, -1 at
// the root. `closed` is false if the header or the indentation is not as YAML 1.2 wants it.
ScalarSource read_block(std::string_view bytes, std::size_t at, int parent_indent);

}  // namespace sheafc
