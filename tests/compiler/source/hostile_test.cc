// SPDX-License-Identifier: GPL-2.0-or-later
// Sheets made to break the reader: each must end in a tree or a located fault, in bounded time. The bound
// is loose, for slow machines and sanitizers; what it must catch is a cost that grows with the square.
#include <doctest/doctest.h>

#include <chrono>

#include "tests/compiler/source/reading.h"

using sheafc::Reading;

namespace {

constexpr std::size_t most = sheafc::max_file_bytes;

std::string repeated(std::string_view part, std::size_t size = most) {
  std::string text;
  text.reserve(size);
  while (text.size() + part.size() <= size) text += part;
  return text;
}

std::string aliases_of_aliases() {
  std::string text = "a0: &a0 x\n";
  for (int i = 1; i < 40; ++i) {
    const std::string before = "*a" + std::to_string(i - 1);
    text += "a" + std::to_string(i) + ": &a" + std::to_string(i) + " [" + before + ", " + before + "]\n";
  }
  return text;
}

std::string distinct_keys(std::size_t count) {
  std::string text;
  for (std::size_t i = 0; i < count; ++i) text += "k" + std::to_string(i) + ":\n";
  return text.substr(0, text.rfind('\n', most) + 1);
}

std::string first_rule(const Reading& sheet) {
  return sheet.sink.all().empty() ? "none" : std::string(sheet.sink.all()[0].rule);
}

}  // namespace

TEST_CASE("hostile sheets are refused with the right words, in bounded time") {
  struct Case {
    std::string name;
    std::string text;
    const char* rule;
  };
  const Case cases[] = {
      {"more than the limit", std::string(most + 1, 'x'), "too-large"},
      {"100 MB", std::string(100u << 20, 'x'), "too-large"},
      {"open brackets", repeated("["), "too-deep"},
      {"open braces", repeated("{"), "too-deep"},
      {"open braces with keys", repeated("{a: "), "too-deep"},
      {"both", repeated("[{"), "bad-key"},
      {"dashes", repeated("- "), "too-deep"},
      {"question marks", repeated("? "), "bad-key"},
      {"closing brackets", repeated("]"), "unclosed-bracket"},
      {"colons", repeated(":"), "bad-key"},
      {"colons with spaces", repeated(": "), "bad-key"},
      {"commas", repeated(","), "bad-start"},
      {"aliases of aliases", aliases_of_aliases(), "anchor-or-alias"},
      {"anchors", repeated("&a "), "anchor-or-alias"},
      {"tags", repeated("!a "), "tag"},
      {"nothing but NULs", std::string(most, '\0'), "control-character"},
      {"nothing but spaces", std::string(most, ' '), "empty-sheet"},
      {"nothing but lines", std::string(most, '\n'), "empty-sheet"},
      {"nothing but tabs", std::string(most, '\t'), "tab-indent"},
      {"a tab on every line", repeated("\ta\n"), "tab-indent"},
      {"bytes of another encoding", repeated("\xE9\n"), "not-utf-8"},
      {"one quote", "a: \"" + repeated("x y\n  ", most - 8), "unterminated-quote"},
      {"quotes", repeated("\""), "text-after-value"},
      {"backslashes", "a: \"" + repeated("\\", most - 8), "unterminated-quote"},
      {"document marks", repeated("---\n"), "several-documents"},
      {"the same key", repeated("a: 1\n"), "duplicate-key"},
      {"one long scalar", "a: " + std::string(most - 4, 'x') + "\n", "none"},
      {"one long folded scalar", "a: >\n" + repeated("  x\n\n", most - 8), "none"},
      {"one long plain scalar", "a: x\n" + repeated("  x\n", most - 8), "none"},
      {"one long list", "a: [" + repeated("x, ", most - 8) + "x]\n", "none"},
      {"one long list of lines", "a:\n" + repeated("- x\n", most - 8), "none"},
      {"many keys", distinct_keys(200000), "empty-value"},
      {"many empty values in a list", "a:\n" + repeated("-\n", most - 8), "empty-value"},
      {"comments", repeated("# x\n"), "empty-sheet"},
      {"a second colon on every line", repeated("a: b: c\n"), "second-colon"},
      {"a fault in every entry", "s:\n" + repeated("  a: *x\n", most - 8), "anchor-or-alias"},
      {"text without colons", repeated("a\n"), "none"},
      {"ever deeper mappings",
       [] {
         std::string text;
         for (int i = 0; i < 1400; ++i) text += std::string(static_cast<std::size_t>(i), ' ') + "a:\n";
         return text;
       }(),
       "too-deep"},
  };
  for (const Case& c : cases) {
    INFO(c.name);
    const auto start = std::chrono::steady_clock::now();
    const Reading sheet(c.text);
    const auto seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    CHECK(first_rule(sheet) == c.rule);
    CHECK(seconds < 20);
    CHECK(sheet.sink.all().size() < most);
  }
}

TEST_CASE("64 levels are read and 65 are not") {
  const auto nested = [](int depth) {
    return std::string(static_cast<std::size_t>(depth), '[') + "x" +
           std::string(static_cast<std::size_t>(depth), ']') + "\n";
  };
  CHECK(Reading(nested(64)).faults() == "none");
  CHECK(Reading(nested(65)).faults() == "1:65 too-deep");
}
