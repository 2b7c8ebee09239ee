// SPDX-License-Identifier: GPL-2.0-or-later
// Each of the parser's messages leads to one small function that looks at the lines around.
#include "compiler/source/syntax_fault.h"

#include <algorithm>
#include <cstdint>

#include "compiler/source/scalar_source.h"

namespace sheafc {
namespace {

using Text = std::string_view;
constexpr std::size_t none = Text::npos;

struct Line {
  std::size_t start = 0;
  Text text;  // without its end

  std::size_t indent() const { return std::min(text.find_first_not_of(' '), text.size()); }
  std::size_t first() const { return start + indent(); }
  Text content() const { return text.substr(indent()); }
  bool says_something() const { return !content().empty() && content()[0] != '#'; }
  bool is_item() const { return content() == "-" || content().starts_with("- "); }
};

Line line_around(Text bytes, std::size_t at) {
  const std::size_t feed = at == 0 ? none : bytes.rfind('\n', at - 1);
  const std::size_t start = feed == none ? 0 : feed + 1;
  Text text = bytes.substr(start, bytes.find('\n', start) - start);
  if (text.ends_with('\r')) text.remove_suffix(1);
  return {start, text};
}

// The nearest line above that is neither blank nor a comment; its text is empty if there is none.
Line line_above(Text bytes, Line line) {
  while (line.start > 0) {
    line = line_around(bytes, line.start - 1);
    if (line.says_something()) return line;
  }
  return {0, {}};
}

std::size_t key_end(const Line& line) {
  const std::size_t colon = line.text.find(": ");
  if (colon != none) return colon;
  return line.text.ends_with(':') ? line.text.size() - 1 : none;
}

// "`torque`" of "    torque: 28 N·m".
std::string key_of(const Line& line) {
  return "`" + std::string(line.text.substr(line.indent(), key_end(line) - line.indent())) + "`";
}

bool only_space_between(Text bytes, std::size_t from, std::size_t to) {
  return bytes.substr(from, to - from).find_first_not_of(' ') == none;
}

char last_mark_before(Text bytes, std::size_t at, std::size_t from) {
  while (at > from && bytes[at - 1] == ' ') --at;
  return at > from ? bytes[at - 1] : '\0';
}

// --- one function a message --------------------------------------------------------------------------

SyntaxFault second_colon(const ParserStop& stop) {
  return {stop.at, 1, "second-colon",
          "a second colon in one line starts no value here; put a value that holds `: ` in quotes"};
}

SyntaxFault missing_colon(const Line& line) {
  return {line.first(), line.content().size(), "missing-colon",
          "this line has no colon: write `key: value`, or indent it if the text above goes on here"};
}

SyntaxFault stray_colon(const ParserStop& stop) {
  const Line line = line_around(stop.bytes, stop.at);
  const std::size_t own_colon = key_end(line);
  if (own_colon != none && line.start + own_colon < stop.at) return second_colon(stop);
  if (stop.at - line.start > 1024) {
    return {line.first(), 1, "bad-key", "a key is longer than 1024 bytes, the most that YAML allows"};
  }
  const Line above = line_above(stop.bytes, line);
  if (line.is_item() || above.is_item()) {
    return {line.first(), 1, "bad-indent",
            "this line belongs neither to the list item above nor to the list"};
  }
  if (!above.text.empty() && key_end(above) == none && above.indent() <= line.indent())
    return missing_colon(above);
  if (!above.text.empty() && above.indent() < line.indent()) {
    return {line.first(),  1,
            "bad-indent",  "this line is indented under " + key_of(above) + ", which has its value already",
            above.first(), "the value stands here"};
  }
  return {stop.at, 1, "second-colon",
          "this colon starts no value here; put text that holds a colon in quotes"};
}

SyntaxFault stray_dash(const ParserStop& stop) {
  return {stop.at, 1, "stray-dash",
          "a list cannot start here; write each `- item` on a line of its own below the key, or use [ ]"};
}

SyntaxFault bad_start(const ParserStop& stop) {
  const std::string mark(stop.bytes.substr(stop.at, 1));
  if (mark == "?") return {stop.at, 1, "bad-start", "text that holds a ? goes in quotes inside [ ] or { }"};
  return {stop.at, 1, "bad-start", "a value cannot start with " + mark + " here; put it in quotes"};
}

// "0, 2 or 4"
std::string in_words(std::vector<int> numbers) {
  std::sort(numbers.begin(), numbers.end());
  numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
  std::string words;
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    if (i > 0) words += i + 1 == numbers.size() ? " or " : ", ";
    words += std::to_string(numbers[i]);
  }
  return words;
}

SyntaxFault text_after(Text bytes, std::size_t at) {
  const Line line = line_around(bytes, at);
  const char before = last_mark_before(bytes, at, line.start);
  std::string message = "this stands after a complete value; put the whole value in quotes";
  if (before == '"')
    message = "this stands after the closing quote; put a value that holds \" in single quotes";
  if (before == '\'')
    message = "this stands after the closing quote; put a value that holds ' in double quotes";
  if (before == ']' || before == '}') message = std::string("this stands after the closing ") + before;
  return {at, line.start + line.text.size() - at, "text-after-value", message};
}

// Something stands where the next key or list item should.
SyntaxFault misplaced(const ParserStop& stop) {
  if (stop.bytes[stop.at] == ',') return bad_start(stop);
  const Line line = line_around(stop.bytes, stop.at);
  if (!only_space_between(stop.bytes, line.start, stop.at)) return text_after(stop.bytes, stop.at);
  const Line above = line_above(stop.bytes, line);
  if (above.is_item() && above.indent() == line.indent()) {
    return {stop.at, 1, "bad-indent", "this line has no `- ` but stands among the items of a list"};
  }
  if (line.is_item())
    return {stop.at, 1, "stray-dash", "a list item where a key should stand; indent it like the other items"};
  std::vector<int> columns = stop.columns;
  columns.push_back(static_cast<int>(above.indent()));
  return {stop.at, 1, "bad-indent",
          "this line is indented by " + std::to_string(line.indent()) + ", the lines it could belong to by " +
              in_words(std::move(columns))};
}

bool ends_with_any(Text text, Text marks) { return !text.empty() && marks.find(text.back()) != none; }

// Inside [ ] or { }.
SyntaxFault unfinished_flow(const ParserStop& stop) {
  const Line line = line_around(stop.bytes, stop.at);
  const Line above = line_above(stop.bytes, line);
  const bool starts_line =
      key_end(line) == stop.at - line.start || only_space_between(stop.bytes, line.start, stop.at);
  if (starts_line && above.says_something() && !ends_with_any(above.text, ",[{:")) {
    return missing_comma(above.start + above.text.size() - 1);
  }
  if (stop.bytes[stop.at] == ':') return second_colon(stop);
  if (stop.bytes[stop.at] == '?') return bad_start(stop);
  return {stop.at, 1, "missing-comma", "a comma or a closing bracket is missing before this"};
}

SyntaxFault stray_bracket(const ParserStop& stop) {
  return {stop.at, 1, "unclosed-bracket",
          std::string("this ") + stop.bytes[stop.at] +
              " closes nothing that is open; put text that holds it in quotes"};
}

// The quote that was never closed is the first one after the tree's end that does not close.
SyntaxFault open_quote(const ParserStop& stop) {
  std::size_t at = stop.read_to;
  while (at < stop.at) {
    const char c = stop.bytes[at];
    const bool starts = at == 0 || Text(" \n[{,:").find(stop.bytes[at - 1]) != none;
    if (c == '#' && starts) {
      at = std::min(stop.bytes.find('\n', at), stop.at);
    } else if ((c == '"' || c == '\'') && starts) {
      const ScalarSource quoted = read_quoted(stop.bytes, at);
      if (!quoted.closed || quoted.end > stop.at) return unterminated_quote(at, none);
      at = quoted.end;
    } else {
      ++at;
    }
  }
  return unterminated_quote(std::min(stop.read_to, stop.at), none);
}

SyntaxFault block_header(const ParserStop& stop) {
  const Line line = line_around(stop.bytes, stop.at);
  const std::size_t mark = std::min(line.text.find_last_of("|>", stop.at - line.start), line.text.size() - 1);
  return {line.start + mark, 1, "bad-start",
          std::string("text after ") + line.text[mark] +
              " starts on the next line; put a value that starts with this mark in quotes"};
}

SyntaxFault unknown_escape(const ParserStop& stop) {
  return bad_escape(stop.bytes, std::min(stop.bytes.rfind('\\', stop.at - 1), stop.at));
}

SyntaxFault bad_property(const ParserStop& stop) {
  const std::size_t mark = stop.bytes.find_last_of("&*!", stop.at);
  return property_fault(stop.bytes, mark == none ? stop.at : mark);
}

SyntaxFault directive(const ParserStop& stop) {
  return {line_around(stop.bytes, stop.at).start, 1, "directive",
          "a YAML directive, which sheets do not use; take it out"};
}

struct Explanation {
  Text words;  // how the parser's message starts
  SyntaxFault (*explain)(const ParserStop&);
};

constexpr Explanation explanations[] = {
    {"illegal map value", stray_colon},
    {"illegal map key", stray_colon},
    {"illegal block entry", stray_dash},
    {"end of map not found", misplaced},
    {"end of sequence not found", misplaced},
    {"end of map flow", unfinished_flow},
    {"end of sequence flow", unfinished_flow},
    {"illegal flow end", stray_bracket},
    {"illegal document indicator", open_quote},
    {"illegal EOF", open_quote},
    {"unknown token", bad_start},
    {"unexpected character in block scalar", block_header},
    {"cannot set zero indentation", block_header},
    {"unknown escape character", unknown_escape},
    {"bad character found while scanning hex", unknown_escape},
    {"invalid unicode", unknown_escape},
    {"anchor not found", bad_property},
    {"alias not found", bad_property},
    {"illegal character found while scanning", bad_property},
    {"the referenced anchor", bad_property},
    {"cannot assign", bad_property},
    {"aliases can't", bad_property},
    {"tag handle", bad_property},
    {"end of verbatim tag", bad_property},
    {"YAML directive", directive},
    {"TAG directive", directive},
    {"bad YAML version", directive},
    {"YAML major version", directive},
    {"repeated", directive},
};

}  // namespace

SyntaxFault explain(const ParserStop& stop) {
  for (const Explanation& known : explanations) {
    if (stop.words.starts_with(known.words)) return known.explain(stop);
  }
  return {stop.at, 1, "bad-yaml", "this cannot be read as YAML (" + std::string(stop.words) + ")"};
}

SyntaxFault property_fault(Text bytes, std::size_t at) {
  const std::size_t length = std::min(bytes.find_first_of(" \t\r\n,[]{}", at), bytes.size()) - at;
  const std::string word(bytes.substr(at, length));
  const char mark = bytes[at];
  const std::string name = mark == '!' ? "tag" : mark == '&' ? "anchor" : "alias";
  return {at, std::max<std::size_t>(length, 1), mark == '!' ? Text("tag") : Text("anchor-or-alias"),
          "`" + word + "` reads as a YAML " + name + ", which sheets do not use; put text that starts with " +
              mark + " in quotes"};
}

SyntaxFault bad_escape(Text bytes, std::size_t at) {
  return {at, 2, "bad-escape",
          "`" + std::string(bytes.substr(at, 2)) +
              "` is no escape for a sheet; write \\\\ for a backslash, or use single quotes"};
}

SyntaxFault unterminated_quote(std::size_t at, std::size_t next_entry) {
  if (next_entry == none) return {at, 1, "unterminated-quote", "the quote that opens here is never closed"};
  return {at,
          1,
          "unterminated-quote",
          "the quote that opens here is not closed before the next entry",
          next_entry,
          "this line is indented no more than the quote's own line"};
}

SyntaxFault unclosed_bracket(Text bytes, std::size_t at, std::size_t next_entry) {
  const std::string opening = std::string("the ") + bytes[at] + " that opens here is ";
  if (next_entry == none) return {at, 1, "unclosed-bracket", opening + "never closed"};
  return {at,
          1,
          "unclosed-bracket",
          opening + "not closed before the next entry",
          next_entry,
          "the next entry stands here"};
}

SyntaxFault missing_comma(std::size_t at) {
  return {at, 1, "missing-comma", "a comma or a closing bracket is missing at the end of this line"};
}

SyntaxFault after_the_end(Text bytes, std::size_t at) {
  const bool marked =
      bytes.substr(at, 3) == "---" || line_above(bytes, line_around(bytes, at)).text.starts_with("...");
  if (marked) {
    return {at, 3, "several-documents", "a second document starts here; a file holds one sheet"};
  }
  if (bytes[at] == ',') return {at, 1, "bad-start", "a value cannot start with a comma; put it in quotes"};
  if (!only_space_between(bytes, line_around(bytes, at).start, at)) return text_after(bytes, at);
  return {at, 1, "bad-indent", "this does not belong to what stands above it; is its indentation right?"};
}

}  // namespace sheafc
