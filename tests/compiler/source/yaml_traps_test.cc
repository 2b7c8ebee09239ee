// SPDX-License-Identifier: GPL-2.0-or-later
// Where YAML, or the parser underneath, would guess, drop or misread what a writer typed.
#include <doctest/doctest.h>

#include "tests/compiler/source/reading.h"

using sheafc::Node;
using sheafc::Reading;

TEST_CASE("scalars that other YAML programs take for numbers, truth values or times are read as text") {
  const Reading sheet(
      "country: NO\nswitch: off\ncode: 010\nlast: 022\npower: 1e3\nratio: 1:10\ntime: 12:30\ninfinite: "
      ".inf\nplus: +5\n"
      "grouped: 1_000\nsize: 41x54x11\nfraction: 1-1/2 in\n");
  REQUIRE(sheet.faults() == "none");
  for (const auto& [key, text] :
       std::initializer_list<std::pair<const char*, const char*>>{{"country", "NO"},
                                                                  {"switch", "off"},
                                                                  {"code", "010"},
                                                                  {"last", "022"},
                                                                  {"power", "1e3"},
                                                                  {"ratio", "1:10"},
                                                                  {"time", "12:30"},
                                                                  {"infinite", ".inf"},
                                                                  {"plus", "+5"},
                                                                  {"grouped", "1_000"},
                                                                  {"size", "41x54x11"},
                                                                  {"fraction", "1-1/2 in"}}) {
    CAPTURE(key);
    CHECK(sheet.at(key).text == text);
    CHECK(sheet.at(key).kind == Node::Kind::scalar);
    CHECK_FALSE(sheet.at(key).quoted);
  }
}

TEST_CASE("quoted, plain, block and flow are told apart") {
  const Reading sheet(
      "single: '22'\ndouble: \"22\"\nplain: 22\nliteral: |\n  22\nfolded: >-\n  22\nlist: [22]\nrows:\n  - "
      "22\n");
  REQUIRE(sheet.faults() == "none");
  CHECK(sheet.at("single").quoted);
  CHECK(sheet.at("double").quoted);
  CHECK_FALSE(sheet.at("plain").quoted);
  CHECK(sheet.at("literal").block);
  CHECK_FALSE(sheet.at("literal").quoted);
  CHECK(sheet.at("literal").text == "22\n");
  CHECK(sheet.at("folded").block);
  CHECK(sheet.at("folded").text == "22");
  CHECK(sheet.at("list").flow);
  CHECK_FALSE(sheet.at("rows").flow);
}

TEST_CASE("text over several lines folds as YAML 1.2 says") {
  const Reading sheet(
      "plain: the casting reads\n  S41 beside\n\n  the axle\n"
      "double: \"one\n  two \\\n  three\n\n  four\"\n"
      "single: 'it''s\n  here'\n"
      "literal: |\n  a\n   b\n\n  c\n"
      "folded: >\n  a\n  b\n\n  c\n   d\n  e\n"
      "kept: |+\n  a\n\n"
      "after: x\n");
  REQUIRE(sheet.faults() == "none");
  CHECK(sheet.at("plain").text == "the casting reads S41 beside\nthe axle");
  CHECK(sheet.at("double").text == "one two three\nfour");
  CHECK(sheet.at("single").text == "it's here");
  CHECK(sheet.at("literal").text == "a\n b\n\nc\n");
  CHECK(sheet.at("folded").text == "a b\nc\n d\ne\n");
  CHECK(sheet.at("kept").text == "a\n\n");
  CHECK(sheet.at("after").text == "x");
}

TEST_CASE("every trap is refused at its place") {
  struct Case {
    std::string name;
    const char* text;
    std::string faults;
  };
  const Case cases[] = {
      {"duplicate keys", "a: 1\nb: 2\na: 3\n", "3:1 duplicate-key"},
      {"duplicate keys, one of them quoted", "a: 1\n\"a\": 3\n", "2:1 duplicate-key"},
      {"duplicate keys in braces", "x: { a: 1, a: 2 }\n", "1:12 duplicate-key"},
      {"merge key", "<<: x\n", "1:1 merge-key"},
      {"anchor", "a: &x 1\n", "1:4 anchor-or-alias"},
      {"alias", "a: *x\n", "1:4 anchor-or-alias"},
      {"an alias that holds itself", "a: &x [1, *x]\n", "1:4 anchor-or-alias"},
      {"tag", "a: !!int 5\n", "1:4 tag"},
      {"lone tag", "a: ! x\n", "1:4 tag"},
      {"tag without value", "a: !\n", "1:4 tag"},
      {"directive", "%YAML 1.1\n---\na: 1\n", "1:1 directive"},
      {"unterminated double quote", "a: \"x\nb: 2\n", "1:4 unterminated-quote"},
      {"unterminated single quote", "a: 'x\nb: 2\n", "1:4 unterminated-quote"},
      {"unterminated quote, no line feed at the end", "a: 'x", "1:4 unterminated-quote"},
      {"unterminated quote in an entry", "s:\n  a: \"x\n  b: \"y\"\n", "2:6 unterminated-quote"},
      {"second document", "a: 1\n---\nb: 2\n", "2:1 several-documents"},
      {"second document after an end mark", "a: 1\n...\n---\nb: 2\n", "3:1 several-documents"},
      {"a list with a key after it", "- a\nb: c\n", "2:1 bad-indent"},
      {"tab for indentation", "a:\n\tb: 1\n", "2:1 tab-indent"},
      {"tab after spaces", "a:\n  \tb: 1\n", "2:3 tab-indent"},
      {"no-break space for indentation", "a:\n\xC2\xA0 b: 1\n", "2:1 odd-indent"},
      {"screw size taken for a comment", "a: #10-32\n", "1:1 empty-value"},
      {"screw size cut off", "a: screw #10-32\n", "1:10 comment-or-value"},
      {"inch size with text after its quote", "a: \"5/16\"-18\n", "1:10 text-after-value"},
      {"no value", "a:\nb: 1\n", "1:1 empty-value"},
      {"null", "a: null\n", "1:1 empty-value"},
      {"tilde", "a: ~\n", "1:1 empty-value"},
      {"empty list item", "a:\n  -\n  - x\n", "2:3 empty-value"},
      {"null in a list", "a: [x, null]\n", "1:8 empty-value"},
      {"comma too many", "a: [x, , y]\n", "1:8 empty-item"},
      {"key without space after its colon", "a:1\nb: 2\n", "1:1 missing-colon"},
      {"last line without colon", "a: 1\nb\n", "2:1 missing-colon"},
      {"list in braces", "a: { x, y }\n", "1:6 missing-colon"},
      {"second colon", "a: M8: x\n", "1:6 second-colon"},
      {"indented under a value", "a: 1\n  b: 2\n", "2:3 bad-indent"},
      {"at sign", "a: @x\n", "1:4 bad-start"},
      {"per cent sign", "a: %5\n", "1:4 bad-start"},
      {"back quote", "a: `x\n", "1:4 bad-start"},
      {"greater than", "a: > 0.2 mm\n", "1:4 bad-start"},
      {"lone dash in brackets", "a: [x, -, y]\n", "1:8 bad-start"},
      {"question mark key", "? a\n", "1:1 bad-key"},
      {"list as key", "[a, b]: c\n", "1:1 bad-key"},
      {"null as key", "null: c\n", "1:1 bad-key"},
      {"comment without space", "a: \"x\"#y\n", "1:7 comment-without-space"},
      {"open bracket", "a: [x\nb: 2\n", "1:4 unclosed-bracket"},
      {"open bracket at the end", "a: [x\n", "1:4 unclosed-bracket"},
      {"line in brackets not indented", "a: [x,\ny]\n", "2:1 bad-indent"},
      {"escape for a control character", "a: \"\\x07\"\n", "1:5 bad-escape"},
      {"escape that the parser spoils", "a: \"x\\_y\"\n", "1:6 bad-escape"},
      {"unknown escape", "a: \"\\q\"\n", "1:5 bad-escape"},
      {"surrogate escape", "a: \"\\uD800\"\n", "1:5 bad-escape"},
      {"nothing at all", "", "1:1 empty-sheet"},
      {"comments alone", "# to do\n", "1:1 empty-sheet"},
      {"null alone", "~\n", "1:1 empty-sheet"},
      {"key of more than 1024 bytes", nullptr, "1:1 bad-key"},
  };
  for (const Case& c : cases) {
    CAPTURE(c.name);
    const Reading sheet(c.text ? std::string(c.text) : std::string(1100, 'k') + ": 1\n");
    CHECK(sheet.faults() == c.faults);
  }
}

TEST_CASE("bytes that are not text are refused at their place") {
  using namespace std::string_literals;
  CHECK(Reading("a: \"x\xE9\"\n").faults() == "1:6 not-utf-8");
  CHECK(Reading("a: b\nc: \xC0\xAF\n").faults() == "2:4 not-utf-8");    // overlong
  CHECK(Reading("a: \xED\xA0\x80\n").faults() == "1:4 not-utf-8");      // surrogate
  CHECK(Reading("a: \xF4\x90\x80\x80\n").faults() == "1:4 not-utf-8");  // above U+10FFFF
  CHECK(Reading("a: \xE2\x82\n").faults() == "1:4 not-utf-8");          // cut short
  CHECK(Reading("a: \"x\0y\"\n"s).faults() == "1:6 control-character");
  CHECK(Reading("a: x\x1B[31m\n").faults() == "1:5 control-character");
  CHECK(Reading("a: x\x04y\n").faults() == "1:5 control-character");  // the parser's own mark of the end
  CHECK(Reading("a: \xC2\x85\n").faults() == "1:4 control-character");
  CHECK(Reading("a: x\rb: y\r").faults() == "1:5 control-character");  // one report a line
  CHECK(Reading("a: x\xE2\x80\x8B\n").faults() == "1:5 invisible-character");
  CHECK(Reading("a: x\xE2\x80\xAE\n").faults() == "1:5 invisible-character");
  CHECK(Reading("a: x\xEF\xBF\xBD\n").faults() == "1:5 invisible-character");
  CHECK(Reading("\xFF\xFE"s + "a\0:\0 \0b\0"s).faults() == "1:1 not-utf-8");
  CHECK(Reading("a\0:\0 \0b\0\n\0"s).faults() == "1:1 not-utf-8");
}

TEST_CASE("a byte order mark and lines that end in CR LF are nothing to the writer") {
  const Reading sheet("\xEF\xBB\xBFtorque: 28\r\nstate: \"dry\"\r\nnote: |\r\n  a\r\n  b\r\n");
  REQUIRE(sheet.faults() == "none");
  CHECK(sheet.at("torque").text == "28");
  CHECK(in_words(sheet.at("torque").span) == "t.yaml:1:9+2");
  CHECK(sheet.at("note").text == "a\nb\n");
}

TEST_CASE("sheets in plain good YAML pass without a word") {
  CHECK(Reading("--- # a start mark\na: 1\n...\n").faults() == "none");
  CHECK(Reading("rows:\n- [M8, 1.25]\n- [M10, 1.5]\nalso: [\n  one,\n  two,\n]\n").faults() == "none");
  CHECK(Reading("a: 1   # comment\n  # another\n# a third\nb: {c: 'd', \"e\": f}\n").faults() == "none");
  CHECK(Reading("a:\n    - b: 1\n      c: 2\n    - b: 3\n").faults() == "none");
  CHECK(Reading("url: http://example.invalid/#x\nsize: '#10-32'\nnote: C# and a#b\n").faults() == "none");
}

TEST_CASE("one run finds the faults of several entries") {
  const Reading sheet(
      "fasteners:\n"
      "  one: { torque: 28: N·m }\n"
      "  two:\n"
      "    note: *x\n"
      "  three:\n"
      "    size: \"5/16\"-18\n"
      "  four: { a: 1, a: 2 }\n"
      "seals:\n"
      "  five: [x\n");
  CHECK(sheet.faults() ==
        "2:20 second-colon; 4:11 anchor-or-alias; 6:17 text-after-value; 7:17 duplicate-key; "
        "9:9 unclosed-bracket");
  CHECK_FALSE(sheet.read);
}
