// SPDX-License-Identifier: GPL-2.0-or-later
// What stops the reading of a sheet as YAML. Thrown only between the files that read YAML, because the
// parser's event interface leaves no other way to stop it; the reader turns it into a Diagnostic.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace sheafc {

// Bytes [at, at + length) of the sheet are meant; `related` is another place, if it says something.
struct SyntaxFault {
  std::size_t at = 0;
  std::size_t length = 1;
  std::string_view rule;
  std::string message;
  std::size_t related = std::string_view::npos;
  std::string related_message = {};
};

// The parser's own words name its insides, not the writer's mistake. `at` is where the parser stopped,
// `message` what it said; the answer is read from the bytes around.
SyntaxFault explain(std::string_view bytes, std::size_t at, std::string_view message);

}  // namespace sheafc
