// SPDX-License-Identifier: GPL-2.0-or-later
#include <doctest/doctest.h>

#include "tests/compiler/source/reading.h"

using sheafc::in_words;
using sheafc::Reading;

TEST_CASE("a scalar's place covers its very characters") {
  const Reading sheet(
      "plain: 28 ± 3 N·m   # comment\ndouble: \"a\\tb\"\nsingle: 'it''s'\nlist: [one, two ]\nlong: abc\n  "
      "def\n");
  REQUIRE(sheet.read);
  CHECK(in_words(sheet.at("plain").span) == "t.yaml:1:8+12");  // bytes, not characters
  CHECK(in_words(sheet.at("double").span) == "t.yaml:2:9+6");
  CHECK(in_words(sheet.at("single").span) == "t.yaml:3:9+7");
  CHECK(in_words(sheet.at("list").span) == "t.yaml:4:7+1");
  CHECK(in_words(sheet.at("list").items[1]->span) == "t.yaml:4:13+3");
  CHECK(in_words(sheet.at("long").span) == "t.yaml:5:7+3");  // the first of its lines
}

TEST_CASE("keys, collections and empty values have their places") {
  const Reading sheet("a:\n  \"b c\": 1\n  d: { e: 2 }\n  f:\n  g:\n    - x\n    -\n    - ~\n");
  const auto& a = sheet.at("a");
  CHECK(in_words(a.span) == "t.yaml:2:3+1");
  CHECK(in_words(a.pairs[0].key_span) == "t.yaml:2:3+5");
  CHECK(in_words(a.pairs[1].key_span) == "t.yaml:3:3+1");
  CHECK(in_words(a.pairs[1].value->span) == "t.yaml:3:6+1");
  CHECK(in_words(a.pairs[2].value->span) == "t.yaml:4:3+1");  // at its key
  CHECK(in_words(a.pairs[3].value->items[0]->span) == "t.yaml:6:7+1");
  CHECK(in_words(a.pairs[3].value->items[1]->span) == "t.yaml:7:5+1");  // at its dash
  CHECK(in_words(a.pairs[3].value->items[2]->span) == "t.yaml:8:7+1");
}

TEST_CASE("within finds the characters of a fault inside a scalar") {
  const Reading sheet(
      "plain: 28 ± 3 N·m\ndouble: \"28 Nm\"\nescaped: \"28\\tNm\"\nfolded: 28\n  Nm\nblock: |\n  28 Nm\n");
  REQUIRE(sheet.read);
  const auto within = [&](const char* key, int at, int length) {
    return in_words(sheet.file.within(sheet.at(key), at, length));
  };
  CHECK(within("plain", 8, 4) == "t.yaml:1:16+4");
  CHECK(within("double", 3, 2) == "t.yaml:2:13+2");
  CHECK(within("escaped", 3, 2) == in_words(sheet.at("escaped").span));
  CHECK(within("folded", 3, 2) == in_words(sheet.at("folded").span));
  CHECK(within("block", 3, 2) == "t.yaml:7:6+2");
  CHECK(within("block", 3, 3) == "t.yaml:7:6+2");     // as far as the line goes
  CHECK(within("plain", 0, 0) == "t.yaml:1:8+12");    // no length: all of it
  CHECK(within("plain", 100, 4) == "t.yaml:1:8+12");  // out of range: all of it
}

TEST_CASE("lines are given without their ends") {
  const sheafc::SourceFile file("t.yaml", "one\r\ntwo\n\nfour");
  CHECK(file.line(1) == "one");
  CHECK(file.line(2) == "two");
  CHECK(file.line(3).empty());
  CHECK(file.line(4) == "four");
  CHECK(file.line(5).empty());
  CHECK(file.line(0).empty());
  CHECK(file.line(-1).empty());
}

TEST_CASE("mappings are searched by key and keep their order") {
  std::string text;
  for (int i = 0; i < 40; ++i) text += "k" + std::to_string(i) + ": v" + std::to_string(i) + "\n";
  const Reading sheet(text);
  REQUIRE(sheet.read);
  CHECK(sheet.file.root()->pairs.size() == 40);
  CHECK(sheet.file.root()->pairs[7].key == "k7");
  CHECK(sheet.at("k33").text == "v33");
  CHECK(sheet.file.root()->find("k40") == nullptr);
  CHECK(sheet.file.root()->find_pair("k0")->key_span.line == 1);
}

TEST_CASE("a tree outlives the moving of its file") {
  Reading sheet("short: x\n");
  const sheafc::SourceFile moved = std::move(sheet.file);
  CHECK(moved.root()->find("short")->text == "x");
  CHECK(moved.root()->find("short")->span.file == "t.yaml");
}
