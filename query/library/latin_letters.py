# SPDX-License-Identifier: GPL-2.0-or-later
"""Writes latin_letters.h: what each Latin letter with a mark is without it, in lower case.

From the Unicode Character Database, as Python carries it: compatibility decomposition without its marks.
Letters that do not decompose stand in `by_hand`, after the romanisation common in print.

    python3 latin_letters.py > latin_letters.h
"""
import unicodedata

by_hand = {
    'ß': 'ss', 'ẞ': 'ss', 'æ': 'ae', 'Æ': 'ae', 'œ': 'oe', 'Œ': 'oe', 'ø': 'o', 'Ø': 'o', 'ð': 'd', 'Ð': 'd',
    'þ': 'th', 'Þ': 'th', 'đ': 'd', 'Đ': 'd', 'ħ': 'h', 'Ħ': 'h', 'ı': 'i', 'ĸ': 'k', 'ł': 'l', 'Ł': 'l',
    'ŋ': 'n', 'Ŋ': 'n', 'ŧ': 't', 'Ŧ': 't', 'ƀ': 'b', 'ƒ': 'f', 'ƶ': 'z', 'Ƶ': 'z', 'ǥ': 'g', 'Ǥ': 'g',
}
# Latin-1, Extended-A, Extended-B, Additional, and the ligatures.
blocks = [range(0xC0, 0x250), range(0x1E00, 0x1F00), range(0xFB00, 0xFB07)]


def plain(letter):
    if letter in by_hand:
        return by_hand[letter]
    parts = unicodedata.normalize('NFKD', letter)
    return ''.join(by_hand.get(c, c) for c in parts if not unicodedata.combining(c)).lower()


rows = []
for code in (code for block in blocks for code in block):
    text = plain(chr(code))
    if text.isascii() and text.isalpha():
        rows.append('{0x%X, "%s"}' % (code, text))

print('''// SPDX-License-Identifier: GPL-2.0-or-later
// Written by latin_letters.py; do not edit. Sorted by code point.
#pragma once

#include <array>

namespace sheaf {

struct LatinLetter {
  char32_t code;
  char plain[4];
};

// clang-format off
inline constexpr std::array<LatinLetter, %d> latin_letters = {{''' % len(rows))
line = '   '
for row in rows:
    if len(line) + len(row) + 2 > 108:
        print(line)
        line = '   '
    line += ' ' + row + ','
print(line)
print('}};\n// clang-format on\n\n}  // namespace sheaf')
