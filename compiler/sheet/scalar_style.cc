// SPDX-License-Identifier: GPL-2.0-or-later
// Stricter than YAML: what some reader might take for a number, a truth value or a mark is quoted too,
// but for figures and words that a sheet is full of.
#include "compiler/sheet/scalar_style.h"

namespace sheafc {
namespace {

bool starts_like_yaml(std::string_view text) {
  constexpr std::string_view marks = "[]{}#&*!|>'\"%@`,";
  if (marks.find(text.front()) != std::string_view::npos) return true;
  const bool mark_of_structure = text.front() == '-' || text.front() == '?' || text.front() == ':';
  return mark_of_structure && (text.size() == 1 || text[1] == ' ');
}

}  // namespace

bool needs_quotes(std::string_view text, bool in_flow) {
  if (text.empty() || text.front() == ' ' || text.back() == ' ' || text.back() == ':') return true;
  if (text == "~" || text == "null" || text == "---" || text == "...") return true;
  if (starts_like_yaml(text)) return true;
  if (text.find(": ") != std::string_view::npos || text.find(" #") != std::string_view::npos) return true;
  return in_flow && text.find_first_of(",[]{}") != std::string_view::npos;
}

std::string as_scalar(std::string_view text, bool in_flow) {
  if (!needs_quotes(text, in_flow)) return std::string(text);
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') quoted += '\\';
    quoted += c;
  }
  return quoted + '"';
}

}  // namespace sheafc
