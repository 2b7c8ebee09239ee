// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/utf8.h"

#include <algorithm>
#include <array>

namespace sheaf {
namespace {

struct Range {
  char32_t first, last;
};

// General categories Mn and Me in the scripts a sheet may hold, and the joiners, by blocks of the Unicode
// Standard.
constexpr Range combining[] = {
    {0x0300, 0x036F},   {0x0483, 0x0489},   {0x0591, 0x05BD}, {0x0610, 0x061A}, {0x064B, 0x065F},
    {0x06D6, 0x06DC},   {0x093C, 0x093C},   {0x0941, 0x0948}, {0x094D, 0x094D}, {0x0E31, 0x0E31},
    {0x0E34, 0x0E3A},   {0x0E47, 0x0E4E},   {0x1AB0, 0x1AFF}, {0x1DC0, 0x1DFF}, {0x200B, 0x200F},
    {0x20D0, 0x20F0},   {0x302A, 0x302D},   {0x3099, 0x309A}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F},
    {0x1F3FB, 0x1F3FF}, {0xE0100, 0xE01EF},
};

// East Asian Width W and F (Unicode Standard Annex 11), joined where nothing but unused code points lies
// between.
constexpr Range wide[] = {
    {0x1100, 0x115F},   {0x231A, 0x231B},   {0x23E9, 0x23EC}, {0x25FD, 0x25FE},   {0x2614, 0x2615},
    {0x2648, 0x2653},   {0x26AA, 0x26AB},   {0x26BD, 0x26BE}, {0x2705, 0x2705},   {0x270A, 0x270B},
    {0x274C, 0x274E},   {0x2753, 0x2755},   {0x2795, 0x2797}, {0x2E80, 0x303E},   {0x3041, 0x33FF},
    {0x3400, 0x4DBF},   {0x4E00, 0xA4CF},   {0xA960, 0xA97F}, {0xAC00, 0xD7A3},   {0xF900, 0xFAFF},
    {0xFE30, 0xFE6F},   {0xFF00, 0xFF60},   {0xFFE0, 0xFFE6}, {0x1F300, 0x1F64F}, {0x1F680, 0x1F6FF},
    {0x1F900, 0x1FAFF}, {0x20000, 0x3FFFD},
};

template <std::size_t n>
bool contains(const Range (&ranges)[n], char32_t code) {
  return std::any_of(std::begin(ranges), std::end(ranges),
                     [=](const Range& r) { return code >= r.first && code <= r.last; });
}

unsigned byte_at(std::string_view bytes, std::size_t at) {
  return at < bytes.size() ? static_cast<unsigned char>(bytes[at]) : 0u;
}

std::size_t length_for(unsigned lead) {
  if (lead < 0xC2 || lead > 0xF4) return 0;
  return lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
}

constexpr char32_t least_code[] = {0, 0, 0x80, 0x800, 0x10000};  // by length; less would be overlong

}  // namespace

// By the table of well-formed sequences in the Unicode Standard (3.9, table 3-7).
Character character_at(std::string_view bytes, std::size_t at) {
  const unsigned lead = byte_at(bytes, at);
  if (lead < 0x80) return {lead, 1};
  const std::size_t length = length_for(lead);
  if (length == 0) return {not_utf8, 1};
  char32_t code = lead & (0xFFu >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) {
    const unsigned next = byte_at(bytes, at + i);
    if ((next & 0xC0) != 0x80) return {not_utf8, 1};
    code = code << 6 | (next & 0x3F);
  }
  const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
  if (code < least_code[length] || surrogate || code > 0x10FFFF) return {not_utf8, 1};
  return {code, length};
}

void append_utf8(std::string& out, char32_t code) {
  const auto byte = [&](char32_t value) { out += static_cast<char>(static_cast<unsigned char>(value)); };
  const int tails = code < 0x80 ? 0 : code < 0x800 ? 1 : code < 0x10000 ? 2 : 3;
  constexpr char32_t leads[] = {0x00, 0xC0, 0xE0, 0xF0};
  byte(leads[tails] | code >> (6 * tails));
  for (int shift = 6 * (tails - 1); shift >= 0; shift -= 6) byte(0x80 | ((code >> shift) & 0x3F));
}

int display_width(char32_t code) {
  if (code < 0x300) return 1;
  return contains(combining, code) ? 0 : contains(wide, code) ? 2 : 1;
}

int count_characters(std::string_view bytes) {
  int count = 0;
  for (std::size_t at = 0; at < bytes.size(); at += character_at(bytes, at).length) ++count;
  return count;
}

std::string printable(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const Character c = character_at(text, at);
    const bool steers = c.code < 0x20 || (c.code >= 0x7F && c.code < 0xA0) ||
                        (c.code >= 0x2028 && c.code <= 0x202E) || (c.code >= 0x2066 && c.code <= 0x2069);
    if (c.code == '\t') {
      out += ' ';
    } else if (steers || c.code == not_utf8) {
      out += "\xEF\xBF\xBD";
    } else {
      out += text.substr(at, c.length);
    }
    at += c.length;
  }
  return out;
}

}  // namespace sheaf
