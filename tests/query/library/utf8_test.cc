// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/utf8.h"

#include <doctest/doctest.h>

using namespace sheaf;

TEST_CASE("every code point survives writing and reading") {
  for (char32_t code = 0; code <= 0x10FFFF; ++code) {
    if (code == 0xD800) code = 0xE000;  // the surrogates are no characters
    std::string text;
    append_utf8(text, code);
    const Character c = character_at(text, 0);
    if (c.code != code || c.length != text.size()) {
      CAPTURE(code);
      FAIL("not read back");
    }
  }
}

TEST_CASE("what is not well formed is one byte of no character") {
  for (const char* bytes :
       {"\x80", "\xC0\x80", "\xC1\xBF", "\xE0\x80\x80", "\xED\xA0\x80", "\xF0\x80\x80\x80",
        "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF", "\xE2\x82", "\xC3(", "\xF0\x9F\x92"}) {
    CAPTURE(bytes);
    CHECK(character_at(bytes, 0).code == not_utf8);
    CHECK(character_at(bytes, 0).length == 1);
  }
}

TEST_CASE("characters take their room") {
  CHECK(display_width(U'a') == 1);
  CHECK(display_width(U'·') == 1);
  CHECK(display_width(U'±') == 1);
  CHECK(display_width(0x0301) == 0);
  CHECK(display_width(U'千') == 2);
  CHECK(display_width(U'Ｗ') == 2);
  CHECK(display_width(0x1F527) == 2);
  CHECK(count_characters("28 N·m") == 6);
  CHECK(count_characters("\xE9\xE9") == 2);
}
