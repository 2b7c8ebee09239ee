// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/key_path.h"

#include <algorithm>

namespace sheafc {
namespace {

constexpr int most_lines_up = 2000;  // keeps a report over a monstrous sheet from taking hours

// The key that the line starts with, after its list marks; empty for a line of text or a comment.
std::string_view key_on(std::string_view line, std::size_t& indent) {
  indent = std::min(line.find_first_not_of(" -"), line.size());
  line.remove_prefix(indent);
  if (line.empty() || line[0] == '#') return {};
  const std::size_t colon = line.find(':');
  return colon == std::string_view::npos ? line.substr(0, 40) : line.substr(0, colon);
}

}  // namespace

std::string key_path(std::string_view file, int line, const LineSource& line_of) {
  std::string path;
  std::size_t depth = std::string_view::npos;
  for (int at = line; at > 0 && at > line - most_lines_up && depth > 0; --at) {
    std::size_t indent = 0;
    const std::string_view key = key_on(line_of(file, at), indent);
    if (key.empty() || indent >= depth) continue;
    depth = indent;
    path = path.empty() ? std::string(key) : std::string(key) + "/" + path;
  }
  return path;
}

}  // namespace sheafc
