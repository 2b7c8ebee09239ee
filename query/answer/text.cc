// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/text.h"

#include <algorithm>
#include <array>
#include <utility>

#include "query/library/utf8.h"

namespace sheaf {
namespace {

bool is_line_break(char32_t code) {
  return code == '\n' || code == '\r' || code == '\t' || code == 0x85 || code == 0x2028 || code == 0x2029;
}

// Controls, and the signs that reorder or hide text.
bool is_hidden(char32_t code) {
  return code < 0x20 || (code >= 0x7F && code < 0xA0) || (code >= 0x200B && code <= 0x200F) ||
         (code >= 0x202A && code <= 0x202E) || (code >= 0x2060 && code <= 0x2069) || code == 0xFEFF ||
         code == 0xAD;
}

using Plain = std::pair<std::string_view, std::string_view>;
constexpr std::array<Plain, 26> plain_forms = {
    {{"·", "."},  {"×", "x"}, {"±", "+/-"}, {"−", "-"},      {"–", "-"},     {"—", "-"},   {"°", "deg "},
     {"²", "2"},  {"³", "3"}, {"µ", "u"},   {"μ", "u"},      {"ø", "dia "},  {"“", "\""},  {"”", "\""},
     {"’", "'"},  {"‘", "'"}, {"…", "..."}, {"½", "1/2"},    {"¼", "1/4"},   {"¾", "3/4"}, {"≤", "<="},
     {"≥", ">="}, {"≈", "~"}, {"→", "->"},  {"\u00A0", " "}, {"\u202F", " "}}};

// Letters with marks that the four languages of the sheets use, by their bare letter.
constexpr std::array<Plain, 28> bare_letters = {
    {{"ä", "ae"}, {"ö", "oe"}, {"ü", "ue"}, {"ß", "ss"}, {"Ä", "Ae"}, {"Ö", "Oe"}, {"Ü", "Ue"},
     {"é", "e"},  {"è", "e"},  {"ê", "e"},  {"ë", "e"},  {"á", "a"},  {"à", "a"},  {"â", "a"},
     {"í", "i"},  {"ì", "i"},  {"î", "i"},  {"ï", "i"},  {"ó", "o"},  {"ò", "o"},  {"ô", "o"},
     {"ú", "u"},  {"ù", "u"},  {"û", "u"},  {"ñ", "n"},  {"ç", "c"},  {"É", "E"},  {"œ", "oe"}}};

template <std::size_t N>
const std::string_view* form_of(const std::array<Plain, N>& forms, std::string_view sign) {
  const auto found = std::ranges::find(forms, sign, &Plain::first);
  return found == forms.end() ? nullptr : &found->second;
}

// Where a line of at most `width` columns ends: at its last space, or else where it is full.
std::size_t line_end(std::string_view text, int width) {
  std::size_t space = std::string_view::npos;
  int used = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Character sign = character_at(text, at);
    if (sign.code == ' ') space = at;
    used += display_width(text.substr(at, sign.length));
    if (used > width && at > 0) return space != std::string_view::npos && space > 0 ? space : at;
    at += sign.length;
  }
  return text.size();
}

}  // namespace

std::size_t sign_length(std::string_view text, std::size_t at) {
  const Character sign = character_at(text, at);
  return sign.code == not_utf8 ? 0 : sign.length;
}

int display_width(std::string_view text) {
  int width = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Character sign = character_at(text, at);
    width += display_width(sign.code);
    at += sign.length;
  }
  return width;
}

std::string clean(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Character sign = character_at(text, at);
    if (sign.code == not_utf8) {
      result += '?';
    } else if (is_line_break(sign.code)) {
      result += ' ';
    } else if (!is_hidden(sign.code)) {
      result += text.substr(at, sign.length);
    }
    at += sign.length;
  }
  return result;
}

std::string plain_ascii(std::string_view text) {
  std::string result;
  for (std::size_t at = 0; at < text.size();) {
    const Character sign = character_at(text, at);
    const auto bytes = text.substr(at, sign.length);
    at += sign.length;
    if (sign.code < 0x80) {
      result += bytes;
    } else if (const auto* form = form_of(plain_forms, bytes)) {
      result += *form;
    } else if (const auto* letter = form_of(bare_letters, bytes)) {
      result += *letter;
    } else if (!display_width(sign.code) == 0) {
      result += '?';
    }
  }
  return result;
}

std::vector<std::string> wrap(std::string_view text, int width) {
  width = std::max(width, 1);
  std::vector<std::string> lines;
  do {
    const std::size_t end = line_end(text, width);
    lines.emplace_back(text.substr(0, end));
    text.remove_prefix(end);
    while (text.starts_with(' ')) text.remove_prefix(1);
  } while (!text.empty());
  return lines;
}

std::string padded(std::string_view text, int width) {
  std::string result(text);
  const int missing = width - display_width(text);
  if (missing > 0) result.append(static_cast<std::size_t>(missing), ' ');
  return result;
}

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
  std::string result;
  for (const auto& part : parts) {
    if (!result.empty()) result += between;
    result += part;
  }
  return result;
}

}  // namespace sheaf
