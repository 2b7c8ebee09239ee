// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/words.h"

#include "query/quantity/scan.h"

namespace sheaf {
namespace {

// The bytes of the well-formed UTF-8 character at the front, or 0.
std::size_t character_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  const auto continues = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
  const unsigned lead = byte(0);
  if (lead < 0x80U) return 1;
  if (lead >= 0xC2U && lead < 0xE0U) return continues(1) ? 2 : 0;
  if (lead >= 0xE0U && lead < 0xF0U) {
    const bool overlong = lead == 0xE0U && byte(1) < 0xA0U, surrogate = lead == 0xEDU && byte(1) >= 0xA0U;
    return continues(1) && continues(2) && !overlong && !surrogate ? 3 : 0;
  }
  if (lead >= 0xF0U && lead < 0xF5U) {
    const bool overlong = lead == 0xF0U && byte(1) < 0x90U, beyond = lead == 0xF4U && byte(1) >= 0x90U;
    return continues(1) && continues(2) && continues(3) && !overlong && !beyond ? 4 : 0;
  }
  return 0;
}

}  // namespace

std::optional<Failure> check_text(std::string_view text) {
  if (text.size() > longest_text) return Failure{"the text is too long for one figure"};
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = character_length(text.substr(i));
    const auto c = static_cast<unsigned char>(text[i]);
    if (length == 0) return Failure{"this byte is not UTF-8", static_cast<int>(i), 1};
    if ((c < 0x20 && c != '\t') || c == 0x7F)
      return Failure{"a control character has no place here", static_cast<int>(i), 1};
    i += length;
  }
  return std::nullopt;
}

bool begins_word(std::string_view text) {
  if (text.empty()) return false;
  const auto lead = static_cast<unsigned char>(text.front());
  return is_letter(text.front()) || is_digit(text.front()) || lead >= 0xC3U;
}

std::string with_single_spaces(std::string_view text) {
  std::string words;
  bool space = false;
  while (!text.empty()) {
    if (const std::size_t length = space_length(text)) {
      space = !words.empty();
      text.remove_prefix(length);
      continue;
    }
    if (space) words += ' ';
    space = false;
    words += text.front();
    text.remove_prefix(1);
  }
  return words;
}

}  // namespace sheaf
