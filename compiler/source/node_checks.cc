// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/node_checks.h"

#include <algorithm>
#include <string>

#include "compiler/source/syntax_fault.h"
#include "compiler/source/yaml_reader.h"

namespace sheafc {
namespace {

using Text = std::string_view;

bool is_blank(Text text) { return text.find_first_not_of(" \n") == Text::npos; }

// Of a block that keeps its last line breaks (|+): is the sheet's last line blank and without a line feed?
// Whether it counts is anyone's guess, and the trailer's line feed hides the question.
bool ends_in_doubtful_blanks(const YamlInput& input, std::size_t at, std::size_t end) {
  const bool keeps = input.bytes.substr(at, 3).find('+') != Text::npos;
  const bool reaches_end = input.bytes.find_first_not_of(" \n", end) >= input.text_size;
  return keeps && reaches_end && input.text_size > 0 && input.bytes[input.text_size - 1] == ' ';
}

void check_quoted(Text bytes, std::size_t at, int indent, const ScalarSource& source) {
  if (source.bad_escape) throw bad_escape(bytes, source.bad_escape);
  if (source.least_indent <= indent) throw unterminated_quote(at, source.least_line);
}

void check_plain(Text bytes, const Layout& layout, std::size_t at, int indent, const ScalarSource& source) {
  if (source.least_indent <= indent) layout.refuse_flow_line(source.least_line);
  if (layout.in_flow() && !source.literal.data()) {
    throw missing_comma(bytes.find_last_not_of(" \t\r", bytes.find('\n', at) - 1));
  }
  if (source.value() == "-") {
    throw SyntaxFault{at, 1, "bad-start", "a lone - is YAML's mark of a list item; put it in quotes"};
  }
}

void check_block(std::size_t at, Text value, const ScalarSource& source) {
  if (!is_blank(value) || !is_blank(source.value())) return;
  throw SyntaxFault{at, 1, "uncertain-text",
                    "no text follows; leave the key out, or indent the text more than the key"};
}

SyntaxFault missing_key(Text bytes, std::size_t at) {
  if (bytes[at] == ':') return {at, 1, "bad-key", "a key is missing before this colon"};
  const Text word = bytes.substr(at, bytes.find_first_of(" :\r\n", at) - at);
  if (!spells_null(word)) return {at, 1, "bad-key", "a key and its colon stand on one line"};
  return {at, word.size(), "bad-key",
          "`" + std::string(word) + "` says nothing as a key; if it is text, put it in quotes"};
}

}  // namespace

bool spells_null(Text text) { return text == "~" || text == "null" || text == "Null" || text == "NULL"; }

void check_no_property(const YamlInput& input, std::size_t at) {
  const char mark = input.bytes[at];
  if (mark == '&' || mark == '*' || mark == '!') throw property_fault(input.bytes, at);
}

ScalarSource check_scalar(const YamlInput& input, const Layout& layout, std::size_t at, int indent,
                          Text value, Node& node) {
  const Text bytes = input.bytes;
  node.quoted = bytes[at] == '"' || bytes[at] == '\'';
  node.block = bytes[at] == '|' || bytes[at] == '>';
  ScalarSource source = node.quoted  ? read_quoted(bytes, at)
                        : node.block ? read_block(bytes, at, indent)
                                     : read_plain(bytes, at, value);
  if (node.quoted) check_quoted(bytes, at, indent, source);
  if (node.block) check_block(at, value, source);
  if (!node.quoted && !node.block) check_plain(bytes, layout, at, indent, source);

  const bool doubtful_end = node.block && ends_in_doubtful_blanks(input, at, source.end);
  if (source.closed && source.value() == value && !doubtful_end) return source;
  throw SyntaxFault{at, 1, "uncertain-text",
                    node.block ? "programs read this block of text differently; indent all its lines alike"
                               : "programs read this text differently; write it on one line, in quotes"};
}

void check_key(const YamlInput& input, const Layout& layout, std::size_t at, const Node& key) {
  const auto length = static_cast<std::size_t>(key.span.length);
  if (key.kind == Node::Kind::empty) throw missing_key(input.bytes, at);
  if (key.kind != Node::Kind::scalar || key.block) refuse_collection_as_key(at);
  if (key.text == "<<" && !key.quoted) {
    throw SyntaxFault{at, length, "merge-key",
                      "`<<` merges mappings in some YAML programs; a sheet uses based-on instead"};
  }
  if (layout.in_flow() && input.bytes.find_first_not_of(" \t\r\n", layout.at()) >= input.text_size) {
    throw unclosed_bracket(input.bytes, layout.flow_start(), Text::npos);
  }
  const std::size_t after = input.bytes.find_first_not_of(" \t", layout.at());
  if (after != Text::npos && input.bytes[after] == ':') return;
  throw SyntaxFault{at, length, "missing-colon",
                    "`" + std::string(key.text) + "` has no colon after it: write `key: value`"};
}

void check_value_indent(const Layout& layout, std::size_t at, int column, int indent) {
  if (!layout.at_line_start() || column > indent) return;
  throw SyntaxFault{
      at, 1, "bad-indent",
      "this line is neither a key nor indented more than the key above, whose value it would be"};
}

void refuse_collection_as_key(std::size_t at) {
  throw SyntaxFault{at, 1, "bad-key",
                    "a key is one word or phrase on its line, not a list, a mapping or a block of text"};
}

}  // namespace sheafc
