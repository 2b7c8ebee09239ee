// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/syntax_recovery.h"

#include <algorithm>
#include <string_view>

namespace sheafc {
namespace {

constexpr std::size_t deepest_start = 2;  // columns: a section at 0, an entry of it at 2

std::size_t line_start(std::string_view bytes, std::size_t at) {
  const std::size_t feed = at == 0 ? std::string_view::npos : bytes.rfind('\n', at - 1);
  return feed == std::string_view::npos ? 0 : feed + 1;
}

std::size_t next_line(std::string_view bytes, std::size_t at) {
  return std::min(bytes.find('\n', at), bytes.size() - 1) + 1;
}

// The column of the first mark on the line, or a large number where there is none but a comment.
std::size_t indent_of(std::string_view bytes, std::size_t start) {
  const std::size_t first = bytes.find_first_not_of(' ', start);
  const bool blank =
      first == std::string_view::npos || bytes[first] == '\n' || bytes[first] == '\r' || bytes[first] == '#';
  return blank ? std::string_view::npos : first - start;
}

// The end of [ ] or { }, or the value of a `? key`, belongs to the block above it.
bool ends_block(std::string_view bytes, std::size_t start) {
  const std::size_t first = bytes.find_first_not_of(' ', start);
  return first != std::string_view::npos &&
         (bytes[first] == ']' || bytes[first] == '}' || bytes[first] == ':');
}

bool is_document_mark(std::string_view bytes, std::size_t start) {
  return bytes.substr(start, 3) == "---" || bytes.substr(start, 3) == "...";
}

}  // namespace

bool blank_block_around(std::string& bytes, std::size_t from, std::size_t to) {
  if (bytes.empty()) return false;
  std::size_t start = line_start(bytes, std::min(from, bytes.size() - 1));
  while (start > 0 && indent_of(bytes, start) > deepest_start) start = line_start(bytes, start - 1);
  const std::size_t indent = indent_of(bytes, start);
  std::size_t end = next_line(bytes, start);
  while (end < bytes.size() && (end <= to || indent_of(bytes, end) > indent || ends_block(bytes, end)) &&
         !is_document_mark(bytes, end)) {
    end = next_line(bytes, end);
  }
  bool changed = false;
  for (std::size_t i = start; i < end; ++i) {
    if (bytes[i] == '\n' || bytes[i] == '\r' || bytes[i] == ' ') continue;
    bytes[i] = ' ';
    changed = true;
  }
  return changed;
}

}  // namespace sheafc
