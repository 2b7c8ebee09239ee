// SPDX-License-Identifier: GPL-2.0-or-later
// Width follows the shape of Unicode's East Asian Width in the few blocks that sheets could hold;
// the signs of the trade are all one column wide.
#include "query/answer/text.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

namespace sheaf {
namespace {

constexpr char32_t not_utf8 = 0xFFFFFFFF;

struct Sign {
  char32_t code = 0;
  std::size_t length = 1;
};

bool continues(std::string_view text, std::size_t at, std::size_t count) {
  if (at + count >= text.size()) return false;
  for (std::size_t i = 1; i <= count; ++i)
    if ((static_cast<unsigned char>(text[at + i]) & 0xC0) != 0x80) return false;
  return true;
}

// The shortest form only, no surrogates: what is not UTF-8 by the standard is not UTF-8 here.
Sign sign_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) {
    return static_cast<char32_t>(static_cast<unsigned char>(text[at + i]));
  };
  const char32_t first = byte(0);
  if (first < 0x80) return {first, 1};
  if (first >= 0xC2 && first < 0xE0 && continues(text, at, 1))
    return {(first & 0x1F) << 6 | (byte(1) & 0x3F), 2};
  if (first >= 0xE0 && first < 0xF0 && continues(text, at, 2)) {
    const char32_t code = (first & 0x0F) << 12 | (byte(1) & 0x3F) << 6 | (byte(2) & 0x3F);
    if (code >= 0x800 && (code < 0xD800 || code > 0xDFFF)) return {code, 3};
  }
  if (first >= 0xF0 && first < 0xF5 && continues(text, at, 3)) {
    const char32_t code =
        (first & 0x07) << 18 | (byte(1) & 0x3F) << 12 | (byte(2) & 0x3F) << 6 | (byte(3) & 0x3F);
    if (code >= 0x10000 && code <= 0x10FFFF) return {code, 4};
  }
  return {not_utf8, 1};
}

bool is_combining(char32_t code) {
  return (code >= 0x300 && code <= 0x36F) || code == 0x200D || (code >= 0xFE00 && code <= 0xFE0F);
}

bool is_wide(char32_t code) {
  return (code >= 0x1100 && code <= 0x115F) || (code >= 0x2E80 && code <= 0xA4CF) ||
         (code >= 0xAC00 && code <= 0xD7A3) || (code >= 0xF900 && code <= 0xFAFF) ||
         (code >= 0xFE30 && code <= 0xFE6F) || (code >= 0xFF00 && code <= 0xFF60) ||
         (code >= 0x1F300 && code <= 0x1FAFF) || (code >= 0x20000 && code <= 0x3FFFD);
}

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
    const Sign sign = sign_at(text, at);
    if (sign.code == ' ') space = at;
    used += display_width(text.substr(at, sign.length));
    if (used > width && at > 0) return space != std::string_view::npos && space > 0 ? space : at;
    at += sign.length;
  }
  return text.size();
}

}  // namespace

std::size_t sign_length(std::string_view text, std::size_t at) {
  const Sign sign = sign_at(text, at);
  return sign.code == not_utf8 ? 0 : sign.length;
}

int display_width(std::string_view text) {
  int width = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Sign sign = sign_at(text, at);
    width += is_combining(sign.code) ? 0 : is_wide(sign.code) ? 2 : 1;
    at += sign.length;
  }
  return width;
}

std::string clean(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Sign sign = sign_at(text, at);
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
    const Sign sign = sign_at(text, at);
    const auto bytes = text.substr(at, sign.length);
    at += sign.length;
    if (sign.code < 0x80) {
      result += bytes;
    } else if (const auto* form = form_of(plain_forms, bytes)) {
      result += *form;
    } else if (const auto* letter = form_of(bare_letters, bytes)) {
      result += *letter;
    } else if (!is_combining(sign.code)) {
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
