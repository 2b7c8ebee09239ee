// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/yaml_reader.h"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <cstring>
#include <istream>
#include <streambuf>
#include <vector>

#include "compiler/source/duplicate_keys.h"
#include "compiler/source/layout.h"
#include "compiler/source/scalar_source.h"
#include "compiler/source/source_file.h"

namespace sheafc {
namespace {

using Text = std::string_view;

bool is_blank(Text text) { return text.find_first_not_of(" \n") == Text::npos; }

// The parser reads streams; this one hands it our bytes without a copy.
class ByteStream : public std::streambuf {
 public:
  explicit ByteStream(Text bytes) {
    char* start = const_cast<char*>(bytes.data());  // streambuf's pointers are not const; nobody writes
    setg(start, start, start + bytes.size());
  }
};

bool spells_null(Text text) { return text == "~" || text == "null" || text == "Null" || text == "NULL"; }

SyntaxFault missing_key(Text bytes, std::size_t at) {
  if (bytes[at] == ':') return {at, 1, "bad-key", "a key is missing before this colon"};
  const Text word = bytes.substr(at, bytes.find_first_of(" :\r\n", at) - at);
  if (spells_null(word)) {
    return {at, word.size(), "bad-key",
            "`" + std::string(word) + "` says nothing as a key; if it is text, put it in quotes"};
  }
  return {at, 1, "bad-key", "a key and its colon stand on one line"};
}

SyntaxFault collection_as_key(std::size_t at) {
  return {at, 1, "bad-key",
          "a key is one word or phrase on its line, not a list, a mapping or a block of text"};
}

// How much is underlined of a scalar that reaches from its first byte to its last: the whole if it stands on
// one line, else its first line; of a block its header.
std::size_t marked_length(Text scalar, const ScalarSource& source, const Node& node) {
  if (source.literal.data() && !node.block) return scalar.size();
  return std::min(scalar.find_first_of(node.block ? " \t\r\n" : "\r\n"), scalar.size());
}

// Builds the tree bottom up. Children wait on two stacks, one for items and one for pairs, until their
// collection ends; then they move into the arena in one piece.
class TreeBuilder : public YAML::EventHandler {
 public:
  TreeBuilder(const YamlInput& input, std::pmr::memory_resource& arena, Diagnostics& sink)
      : input_(input),
        bytes_(input.bytes),
        arena_(arena),
        sink_(sink),
        layout_(input.bytes),
        duplicates_(sink) {}

  const Node* root() const { return root_; }
  void walk_to_end() { layout_.walk_to(input_.text_size); }
  void report_doubtful_comments();
  const Layout& layout() const { return layout_; }
  std::vector<int> columns() const {
    std::vector<int> columns;
    for (const Open& open : open_) columns.push_back(open.indent);
    return columns;
  }

  void OnDocumentStart(const YAML::Mark&) override {}
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark& mark, YAML::anchor_t) override;
  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override { refuse_property(position(mark)); }
  void OnAnchor(const YAML::Mark& mark, const std::string&) override { refuse_property(position(mark)); }
  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t,
                const std::string& value) override;
  void OnSequenceStart(const YAML::Mark& mark, const std::string&, YAML::anchor_t,
                       YAML::EmitterStyle::value style) override {
    open(Node::Kind::sequence, mark, style);
  }
  void OnMapStart(const YAML::Mark& mark, const std::string&, YAML::anchor_t,
                  YAML::EmitterStyle::value style) override {
    open(Node::Kind::mapping, mark, style);
  }
  void OnSequenceEnd() override { close(); }
  void OnMapEnd() override { close(); }

 protected:
  static std::size_t position(const YAML::Mark& mark) { return static_cast<std::size_t>(mark.pos); }
  Text bytes() const { return bytes_; }

 private:
  struct Open {
    Node* node;
    std::size_t at;
    int indent;            // of the innermost block collection, this one included
    std::size_t children;  // where they start on their stack
    const Node* key;       // of a mapping, when its value is awaited
  };

  Span span_at(const YAML::Mark& mark, std::size_t length = 1) const {
    return {input_.file, mark.line + 1, mark.column + 1, static_cast<int>(length)};
  }
  int indent() const { return open_.empty() ? -1 : open_.back().indent; }

  void refuse_property(std::size_t at) const;
  void open(Node::Kind kind, const YAML::Mark& mark, YAML::EmitterStyle::value style);
  void close();
  void add(Node* node, std::size_t at);
  void check_value_indent(const YAML::Mark& mark) const;
  void add_key(const Node& node, std::size_t at);
  Span span_of_empty(const YAML::Mark& mark) const;
  bool ends_in_blanks(std::size_t at, std::size_t end) const;
  ScalarSource reread(std::size_t at, Node& node, const std::string& value) const;

  Node* new_node(Node::Kind kind, Span span) {
    Node* node = new (arena_.allocate(sizeof(Node), alignof(Node))) Node;
    node->kind = kind;
    node->span = span;
    return node;
  }

  template <typename T>
  std::span<const T> settle(std::vector<T>& stack, std::size_t from) {
    const std::size_t count = stack.size() - from;
    if (count == 0) return {};
    T* first = static_cast<T*>(arena_.allocate(count * sizeof(T), alignof(T)));
    std::uninitialized_copy(stack.begin() + static_cast<std::ptrdiff_t>(from), stack.end(), first);
    stack.resize(from);
    return {first, count};
  }

  Text keep(Text text) {
    char* kept = static_cast<char*>(arena_.allocate(text.size() + 1, 1));
    std::copy(text.begin(), text.end(), kept);
    return {kept, text.size()};
  }

  const YamlInput& input_;
  Text bytes_;
  std::pmr::memory_resource& arena_;
  Diagnostics& sink_;
  Layout layout_;
  DuplicateKeys duplicates_;
  std::vector<Open> open_;
  std::vector<const Node*> items_;
  std::vector<Pair> pairs_;
  const Node* root_ = nullptr;
};

// Anchors, aliases and tags are the marks & * ! before a node.
void TreeBuilder::refuse_property(std::size_t at) const {
  const char mark = at < bytes_.size() ? bytes_[at] : '\0';
  if (mark == '&' || mark == '*' || mark == '!') throw property_fault(bytes_, at);
}

// An empty value's mark is that of whatever comes next; its place is its key, or its dash.
Span TreeBuilder::span_of_empty(const YAML::Mark& mark) const {
  if (open_.back().key) return open_.back().key->span;
  const std::size_t dash = layout_.last_dash();
  const std::size_t feed = dash == 0 ? Text::npos : bytes_.rfind('\n', dash - 1);
  const std::size_t start = feed == Text::npos ? 0 : feed + 1;
  const auto lines_back =
      std::count(bytes_.begin() + static_cast<std::ptrdiff_t>(dash),
                 bytes_.begin() + static_cast<std::ptrdiff_t>(std::max(dash, position(mark))), '\n');
  return {input_.file, mark.line + 1 - static_cast<int>(lines_back), static_cast<int>(dash - start) + 1, 1};
}

void TreeBuilder::OnNull(const YAML::Mark& mark, YAML::anchor_t) {
  const std::size_t at = position(mark);
  if (at >= layout_.at()) layout_.walk_to(at);
  const std::size_t end = std::min(bytes_.find_first_of(" \t\r\n,]}:#", at), bytes_.size());
  const bool written = at == layout_.at() && spells_null(bytes_.substr(at, end - at));
  if (written) {
    check_value_indent(mark);
    layout_.jump_to(end);
  }
  if (open_.empty()) {
    root_ = new_node(Node::Kind::empty, span_at(mark));
    return;
  }
  const bool in_flow_list = open_.back().node->kind == Node::Kind::sequence && open_.back().node->flow;
  if (in_flow_list && !written) {
    throw SyntaxFault{at, 1, "empty-item",
                      "nothing stands before this mark; take out the comma too many, or write the item"};
  }
  Node* node = new_node(Node::Kind::empty,
                        written && !open_.back().key ? span_at(mark, end - at) : span_of_empty(mark));
  add(node, at);
}

void TreeBuilder::OnScalar(const YAML::Mark& mark, const std::string&, YAML::anchor_t,
                           const std::string& value) {
  const std::size_t at = position(mark);
  refuse_property(at);
  layout_.walk_to(at);
  check_value_indent(mark);
  Node* node = new_node(Node::Kind::scalar, span_at(mark));
  const ScalarSource source = reread(at, *node, value);
  node->text = source.literal.data() ? source.literal : keep(value);
  node->span.length = static_cast<int>(marked_length(bytes_.substr(at, source.end - at), source, *node));
  layout_.jump_to(source.end);
  add(node, at);
}

// Of a block that keeps its last line breaks (|+): is the sheet's last line blank and without a line feed?
// Whether it counts is anyone's guess, and the trailer's line feed hides the question.
bool TreeBuilder::ends_in_blanks(std::size_t at, std::size_t end) const {
  const bool keeps = bytes_.substr(at, 3).find('+') != Text::npos;
  const bool reaches_end = bytes_.find_first_not_of(" \n", end) >= input_.text_size;
  return keeps && reaches_end && input_.text_size > 0 && bytes_[input_.text_size - 1] == ' ';
}

// Finds where the scalar ends, and refuses it where the parser's text is not what the bytes say.
ScalarSource TreeBuilder::reread(std::size_t at, Node& node, const std::string& value) const {
  const char mark = bytes_[at];
  node.quoted = mark == '"' || mark == '\'';
  node.block = mark == '|' || mark == '>';
  ScalarSource source = node.quoted  ? read_quoted(bytes_, at)
                        : node.block ? read_block(bytes_, at, indent())
                                     : read_plain(bytes_, at, value);
  if (source.bad_escape) throw bad_escape(bytes_, source.bad_escape);
  if (source.least_indent <= indent()) {
    if (node.quoted) throw unterminated_quote(at, source.least_line);
    layout_.refuse_flow_line(source.least_line);
  }
  if (layout_.in_flow() && !node.quoted && !source.literal.data()) {
    throw missing_comma(bytes_.find_last_not_of(" \t\r", bytes_.find('\n', at) - 1));
  }
  if (value == "-" && !node.quoted) {
    throw SyntaxFault{at, 1, "bad-start", "a lone - is YAML's mark of a list item; put it in quotes"};
  }
  if (node.block && is_blank(value) && is_blank(source.value())) {
    throw SyntaxFault{at, 1, "uncertain-text",
                      "no text follows; leave the key out, or indent the text more than the key"};
  }
  const bool certain =
      source.closed && source.value() == value && !(node.block && ends_in_blanks(at, source.end));
  if (!certain) {
    throw SyntaxFault{at, 1, "uncertain-text",
                      node.block ? "programs read this block of text differently; indent all its lines alike"
                                 : "programs read this text differently; write it on one line, in quotes"};
  }
  return source;
}

void TreeBuilder::open(Node::Kind kind, const YAML::Mark& mark, YAML::EmitterStyle::value style) {
  const std::size_t at = position(mark);
  refuse_property(at);
  layout_.walk_to(at);
  if (open_.size() >= static_cast<std::size_t>(max_depth)) {
    throw SyntaxFault{at, 1, "too-deep",
                      "nested more than " + std::to_string(max_depth) + " deep, the most that is read"};
  }
  Node* node = new_node(kind, span_at(mark));
  node->flow = style == YAML::EmitterStyle::Flow;
  if (node->flow) {
    check_value_indent(mark);
    const bool has_bracket =
        bytes_[at] == (kind == Node::Kind::mapping ? '{' : '[');  // not so in [key: value]
    if (has_bracket && at < layout_.at()) throw collection_as_key(at);
    if (has_bracket) layout_.enter_flow(indent());
  }
  const int column = node->flow ? indent() : mark.column;
  open_.push_back({node, at, column, kind == Node::Kind::mapping ? pairs_.size() : items_.size(), nullptr});
}

// A value on a line of its own is indented more than the collection it belongs to; the parser lets it
// stand where the next key should.
void TreeBuilder::check_value_indent(const YAML::Mark& mark) const {
  const bool is_key = !open_.empty() && open_.back().node->kind == Node::Kind::mapping && !open_.back().key;
  if (is_key || !layout_.at_line_start() || mark.column > indent()) return;
  throw SyntaxFault{
      position(mark), 1, "bad-indent",
      "this line is neither a key nor indented more than the key above, whose value it would be"};
}

void TreeBuilder::close() {
  const Open done = open_.back();
  open_.pop_back();
  if (done.node->kind == Node::Kind::sequence) {
    done.node->items = settle(items_, done.children);
  } else {
    done.node->pairs = settle(pairs_, done.children);
    duplicates_.check(done.node->pairs);
  }
  add(done.node, done.at);
}

void TreeBuilder::add(Node* node, std::size_t at) {
  if (open_.empty()) {
    root_ = node;
  } else if (open_.back().node->kind == Node::Kind::sequence) {
    items_.push_back(node);
  } else if (!open_.back().key) {
    add_key(*node, at);
  } else {
    const Node* key = open_.back().key;
    pairs_.push_back({key->text, key->span, node});
    open_.back().key = nullptr;
  }
}

void TreeBuilder::add_key(const Node& node, std::size_t at) {
  const std::size_t length = static_cast<std::size_t>(node.span.length);
  if (node.kind == Node::Kind::empty) throw missing_key(bytes_, at);
  if (node.kind != Node::Kind::scalar || node.block) throw collection_as_key(at);
  if (node.text == "<<" && !node.quoted) {
    throw SyntaxFault{at, length, "merge-key",
                      "`<<` merges mappings in some YAML programs; a sheet uses based-on instead"};
  }
  const std::size_t after = bytes_.find_first_not_of(" \t", layout_.at());
  if (layout_.in_flow() && bytes_.find_first_not_of(" \t\r\n", layout_.at()) >= input_.text_size) {
    throw unclosed_bracket(bytes_, layout_.flow_start(), Text::npos);
  }
  if (after == Text::npos || bytes_[after] != ':') {
    throw SyntaxFault{at, length, "missing-colon",
                      "`" + std::string(node.text) + "` has no colon after it: write `key: value`"};
  }
  open_.back().key = &node;
}

void TreeBuilder::report_doubtful_comments() {
  std::size_t line_start = 0;
  int line = 1;
  std::size_t counted_to = 0;
  for (const std::size_t at : layout_.doubtful_comments()) {
    for (; counted_to < at; ++counted_to) {
      if (bytes_[counted_to] != '\n') continue;
      ++line;
      line_start = counted_to + 1;
    }
    const std::size_t end = std::min(bytes_.find_first_of(" \r\n", at), bytes_.size());
    sink_.warning("comment-or-value",
                  {input_.file, line, static_cast<int>(at - line_start) + 1, static_cast<int>(end - at)},
                  "`" + std::string(bytes_.substr(at, end - at)) +
                      "` is read as a comment; put the whole value in quotes, or a space after the #");
  }
}

// A sheet is one document; this takes whatever the parser finds after it.
class SecondDocument : public TreeBuilder {
 public:
  using TreeBuilder::TreeBuilder;
  void OnDocumentStart(const YAML::Mark& mark) override { throw after_the_end(bytes(), position(mark)); }
};

// What must go before the rest can be read again.
SyntaxFault with_extent(SyntaxFault fault, const Layout& layout, std::size_t stopped_at) {
  fault.entry_start = std::min(fault.at, layout.in_flow() ? layout.flow_start() : layout.at());
  fault.stopped_at = std::max(fault.at, stopped_at);
  return fault;
}

}  // namespace

std::optional<SyntaxFault> read_yaml(const YamlInput& input, std::pmr::memory_resource& arena,
                                     const Node*& root, Diagnostics& sink) {
  ByteStream buffer(input.bytes);
  std::istream stream(&buffer);
  TreeBuilder builder(input, arena, sink);
  try {
    YAML::Parser parser(stream);
    parser.HandleNextDocument(builder);
    SecondDocument second(input, arena, sink);
    parser.HandleNextDocument(second);
    builder.walk_to_end();
    builder.report_doubtful_comments();
  } catch (const SyntaxFault& fault) {
    return with_extent(fault, builder.layout(), fault.at);
  } catch (const YAML::Exception& error) {
    const Layout& layout = builder.layout();
    const std::size_t stop = error.mark.is_null() ? layout.at() : static_cast<std::size_t>(error.mark.pos);
    const std::size_t at = std::min(stop, input.text_size);
    if (layout.in_flow() && at == input.text_size) {
      return with_extent(unclosed_bracket(input.bytes, layout.flow_start(), Text::npos), layout, at);
    }
    return with_extent(explain({input.bytes, at, error.msg, layout.at(), builder.columns()}), layout, at);
  }
  root = builder.root();
  if (!root || root->kind == Node::Kind::empty) {
    return SyntaxFault{0, 1, "empty-sheet", "the sheet is empty: nothing but space and comments"};
  }
  return std::nullopt;
}

}  // namespace sheafc
