// SPDX-License-Identifier: GPL-2.0-or-later
// What stops the reading of a sheet as YAML. Thrown only between the files that read YAML, because the
// parser's event interface leaves no other way to stop it; source_file.cc turns it into a Diagnostic.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sheafc {

// Bytes [at, at + length) of the sheet are meant; `related` is another place, if it says something.
struct SyntaxFault {
  std::size_t at = 0;
  std::size_t length = 1;
  std::string_view rule;
  std::string message;
  std::size_t related = std::string_view::npos;
  std::string related_message = {};
  std::size_t entry_start = 0;  // from here
  std::size_t stopped_at = 0;   // to here the sheet is unreadable
};

// Where and why the parser stopped.
struct ParserStop {
  std::string_view bytes;
  std::size_t at;            // in bytes
  std::string_view words;    // the parser's own; they name its insides, not the writer's mistake
  std::size_t read_to;       // up to here the tree has been built
  std::vector<int> columns;  // of the block collections that were open, outermost first, from 0
};

// The same in the writer's terms, read from the bytes around the stop.
SyntaxFault explain(const ParserStop& stop);

// The mark & * or ! at `at` starts an anchor, an alias or a tag.
SyntaxFault property_fault(std::string_view bytes, std::size_t at);

// The backslash at `at` starts an escape that YAML does not know or a sheet may not hold.
SyntaxFault bad_escape(std::string_view bytes, std::size_t at);

// The quote at `at` is not closed at all (npos), or not before the line at `next_entry`.
SyntaxFault unterminated_quote(std::size_t at, std::size_t next_entry);

// The same of the [ or { at `at`.
SyntaxFault unclosed_bracket(std::string_view bytes, std::size_t at, std::size_t next_entry);

// Inside [ ] or { } the line whose last byte is at `at` runs into the next.
SyntaxFault missing_comma(std::size_t at);

// The parser ended the sheet's one document before `at`, but there is more.
SyntaxFault after_the_end(std::string_view bytes, std::size_t at);

}  // namespace sheafc
