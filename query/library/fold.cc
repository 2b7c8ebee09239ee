// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/fold.h"

#include <xapian.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <unordered_map>

#include "query/library/latin_letters.h"

namespace sheaf {
namespace {

constexpr char32_t not_utf8 = 0xFFFFFFFF;

struct Sign {
  char32_t code = not_utf8;
  std::size_t length = 1;
};

std::size_t length_announced_by(unsigned char lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead < 0xE0) return 2;
  if (lead >= 0xE0 && lead < 0xF0) return 3;
  return lead >= 0xF0 && lead < 0xF5 ? 4 : 0;
}

// The sign at the start of a text that is not empty. Overlong forms and surrogates are not UTF-8.
Sign first_sign(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  const std::size_t length = length_announced_by(lead);
  if (length == 1) return {lead, 1};
  if (length == 0 || text.size() < length) return {};
  char32_t code = lead & (0xFFu >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    if ((byte & 0xC0) != 0x80) return {};
    code = code << 6 | (byte & 0x3Fu);
  }
  const bool overlong = (length == 3 && code < 0x800) || (length == 4 && code < 0x10000);
  const bool surrogate = code >= 0xD800 && code < 0xE000;
  if (overlong || surrogate || code > 0x10FFFF) return {};
  return {code, length};
}

bool between(char32_t code, char32_t first, char32_t last) { return code >= first && code <= last; }

// Signs that say nothing: controls, soft hyphen, apostrophes, accents of their own, joiners.
bool is_dropped(char32_t code) {
  return between(code, 0x80, 0x9F) || code == 0xAD || code == 0xB4 || between(code, 0x2B9, 0x2C5) ||
         between(code, 0x300, 0x36F) || between(code, 0x2018, 0x201B) || between(code, 0x200B, 0x200F) ||
         code == 0x2060 || code == 0xFEFF;
}

bool is_space(char32_t code) {
  return code == 0xA0 || between(code, 0x2000, 0x200A) || between(code, 0x2028, 0x2029) || code == 0x202F ||
         code == 0x205F || code == 0x3000 || code == 0xB7 || code == 0x22C5 || code == not_utf8;
}

bool is_dash(char32_t code) { return between(code, 0x2010, 0x2015) || code == 0x2212 || code == 0xFF0D; }

// What a sign outside ASCII is folded to; none if it stays as it is.
std::string_view folded_sign(char32_t code) {
  if (is_dash(code)) return "-";
  switch (code) {
    case 0xB5:
    case 0x3BC:
      return "u";
    case 0xD7:
    case 0x2715:
    case 0x2A2F:
      return "x";
    case 0xB2:
      return "2";
    case 0xB3:
      return "3";
    default:
      break;
  }
  const auto found = std::ranges::lower_bound(latin_letters, code, {}, &LatinLetter::code);
  return found != latin_letters.end() && found->code == code ? found->plain : std::string_view{};
}

bool has_umlaut(char32_t code) {
  return code == 0xC4 || code == 0xE4 || code == 0xD6 || code == 0xF6 || code == 0xDC || code == 0xFC;
}

enum class Umlauts { dropped, spelt };

// A sign that is not ASCII.
void fold_sign(const Sign& sign, std::string_view bytes, Umlauts umlauts, std::string& folded) {
  constexpr char32_t combining_diaeresis = 0x308;
  const char32_t code = sign.code;
  if (is_space(code)) {
    folded += ' ';
  } else if (umlauts == Umlauts::spelt && code == combining_diaeresis && !folded.empty() &&
             std::string_view("aou").find(folded.back()) != std::string_view::npos) {
    folded += 'e';
  } else if (is_dropped(code)) {
    return;
  } else {
    const std::string_view plain = folded_sign(code);
    folded += plain.empty() ? bytes : plain;
    if (umlauts == Umlauts::spelt && has_umlaut(code)) folded += 'e';
  }
}

// What an ASCII byte is folded to; 0 if it is dropped.
constexpr std::array<char, 128> folded_ascii = [] {
  std::array<char, 128> table{};
  for (std::size_t byte = 0x20; byte < 0x7F; ++byte) table[byte] = static_cast<char>(byte);
  for (char letter = 'A'; letter <= 'Z'; ++letter) {
    table[static_cast<std::size_t>(letter)] = static_cast<char>(letter + 0x20);
  }
  for (std::size_t space = '\t'; space <= '\r'; ++space) table[space] = ' ';
  table['\''] = table['`'] = 0;
  return table;
}();

std::string fold(std::string_view text, Umlauts umlauts) {
  std::string folded;
  folded.reserve(text.size());
  while (!text.empty()) {
    const auto lead = static_cast<unsigned char>(text.front());
    if (lead < 0x80) {
      if (const char plain = folded_ascii[lead]) folded += plain;
      text.remove_prefix(1);
      continue;
    }
    const Sign sign = first_sign(text);
    fold_sign(sign, text.substr(0, sign.length), umlauts, folded);
    text.remove_prefix(sign.length);
  }
  return folded;
}

bool is_digit(char byte) { return byte >= '0' && byte <= '9'; }

// Letters beyond Latin begin with Greek; between them lie blocks of punctuation and signs.
bool is_letter(char32_t code) {
  return (code >= 0x370 && !between(code, 0x2000, 0x2BFF) && !between(code, 0x3000, 0x303F) &&
          code != not_utf8);
}

// How many bytes at `at` belong to a word that holds what stands before it; 0 if it ends there.
std::size_t word_bytes_at(std::string_view text, std::size_t at) {
  const char byte = text[at];
  if ((byte >= 'a' && byte <= 'z') || is_digit(byte)) return 1;
  if (static_cast<unsigned char>(byte) >= 0x80) {
    const Sign sign = first_sign(text.substr(at));
    return is_letter(sign.code) ? sign.length : 0;
  }
  const bool decimal = (byte == '.' || byte == ',') && at > 0 && is_digit(text[at - 1]) &&
                       at + 1 < text.size() && is_digit(text[at + 1]);
  return decimal ? 1 : 0;
}

// The end of the word that begins at `at`; `at` itself if none does.
std::size_t word_end(std::string_view text, std::size_t at) {
  while (at < text.size()) {
    const std::size_t bytes = word_bytes_at(text, at);
    if (bytes == 0) break;
    at += bytes;
  }
  return at;
}

void each_word(std::string_view folded, const auto& take) {
  for (std::size_t at = 0; at < folded.size();) {
    const std::size_t end = word_end(folded, at);
    if (end > at) take(folded.substr(at, end - at));
    at = std::max(end, at + 1);
  }
}

// Hyphens between digits stay: what they part are numbers.
std::string without_hyphens(std::string_view folded) {
  std::string joined;
  for (std::size_t at = 0; at < folded.size(); ++at) {
    const bool inside = folded[at] == '-' && at > 0 && at + 1 < folded.size() && folded[at - 1] != ' ' &&
                        folded[at + 1] != ' ';
    if (!inside || (is_digit(folded[at - 1]) && is_digit(folded[at + 1]))) joined += folded[at];
  }
  return joined;
}

}  // namespace

std::string fold(std::string_view text) { return fold(text, Umlauts::dropped); }

std::vector<std::string> words_of(std::string_view folded) {
  std::vector<std::string> words;
  each_word(folded, [&](std::string_view word) { std::ranges::replace(words.emplace_back(word), ',', '.'); });
  return words;
}

std::vector<std::vector<std::string>> spellings_of(std::string_view text) {
  std::vector<std::vector<std::string>> spellings;
  const auto add = [&](const std::string& folded) {
    std::vector<std::string> words = words_of(folded);
    if (!words.empty() && std::ranges::find(spellings, words) == spellings.end()) {
      spellings.push_back(std::move(words));
    }
  };
  const bool ascii =
      std::ranges::all_of(text, [](char byte) { return static_cast<unsigned char>(byte) < 0x80; });
  for (const Umlauts umlauts : {Umlauts::dropped, Umlauts::spelt}) {
    const std::string folded = fold(text, umlauts);
    add(folded);
    if (folded.find('-') != std::string::npos) add(without_hyphens(folded));
    if (ascii) break;  // no umlauts
  }
  return spellings;
}

std::string squeeze(std::string_view text) {
  std::string squeezed;
  each_word(fold(text), [&](std::string_view word) { squeezed += word; });
  std::ranges::replace(squeezed, ',', '.');
  return squeezed;
}

std::string stem_of(std::string_view word) {
  if (std::ranges::any_of(word, is_digit)) return std::string(word);
  // Few words make up most texts; each thread remembers those it met. Snowball keeps a buffer of its own.
  constexpr std::size_t most_remembered = 20'000;
  thread_local const Xapian::Stem stem("english");
  thread_local std::unordered_map<std::string, std::string> remembered;
  std::string key(word);
  if (const auto known = remembered.find(key); known != remembered.end()) return known->second;
  if (remembered.size() >= most_remembered) remembered.clear();
  std::string stemmed = stem(key);
  remembered.emplace(std::move(key), stemmed);
  return stemmed;
}

}  // namespace sheaf
