// SPDX-License-Identifier: GPL-2.0-or-later
// Sheets made to break the reader: each must end in a tree or a located fault, and twice the bytes must not
// cost four times the work.
#include <doctest/doctest.h>

#include <algorithm>
#include <ctime>

#include "compiler/source/source_file.h"

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

struct Outcome {
  std::string first_rule;
  std::size_t faults;
  double seconds;  // of this process: what others do on the machine does not count
};

Outcome read(const std::string& text) {
  sheafc::Diagnostics sink;
  const std::clock_t start = std::clock();
  sheafc::SourceFile file("t.yaml", text);
  file.parse(sink);
  const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  sink.sort();
  return {sink.all().empty() ? "none" : std::string(sink.all()[0].rule), sink.all().size(), seconds};
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
      {"many keys", distinct_keys(200000), "none"},
      {"many empty values in a list", "a:\n" + repeated("-\n", most - 8), "none"},
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
    const Outcome outcome = read(c.text);
    CHECK(outcome.first_rule == c.rule);
    CHECK(outcome.faults <= 102);
    CHECK(outcome.seconds < 30);
  }
}

TEST_CASE("the cost grows with the bytes, not with their square") {
  struct Shape {
    std::string name, head, part, tail;
  };
  const Shape shapes[] = {
      {"a list on one line", "a: [", "x, ", "x]\n"},
      {"mappings on one line", "a: [", "{b: c}, ", "x]\n"},
      {"quotes on one line", "a: [", "'x', ", "x]\n"},
      {"a list of lines", "a:\n", "- x\n", ""},
      {"keys", "", "a: x\n", ""},
      {"lines of text", "a: >\n", "  x\n\n", ""},
      {"lines of plain text", "a: x\n", "  x\n", ""},
      {"lines in a quote", "a: \"", "x\n  ", "\"\n"},
      {"doubtful comments", "", "- x #1\n", ""},
      {"faults", "s:\n", "  a: *x\n", ""},
  };
  for (const Shape& shape : shapes) {
    INFO(shape.name);
    const auto seconds = [&](std::size_t size) {
      return read(shape.head + repeated(shape.part, size - 16) + shape.tail).seconds;
    };
    const double small = std::min(seconds(most / 8), seconds(most / 8));
    CHECK(seconds(most) < 0.2 + 20 * small);  // linear: 8 times; square: 64 times
  }
}

TEST_CASE("64 levels are read and 65 are not") {
  const auto nested = [](int depth) {
    return std::string(static_cast<std::size_t>(depth), '[') + "x" +
           std::string(static_cast<std::size_t>(depth), ']') + "\n";
  };
  CHECK(read(nested(64)).first_rule == "none");
  CHECK(read(nested(65)).first_rule == "too-deep");
}
