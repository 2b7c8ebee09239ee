// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/tree_builder.h"

#include <algorithm>
#include <memory>
#include <string>

#include "compiler/source/node_checks.h"
#include "compiler/source/source_file.h"
#include "compiler/source/syntax_fault.h"
#include "compiler/source/yaml_reader.h"

namespace sheafc {
namespace {

using Text = std::string_view;

// How much is underlined of a scalar that reaches from its first byte to its last: the whole if it stands on
// one line, else its first line; of a block its header.
std::size_t marked_length(Text scalar, const ScalarSource& source, const Node& node) {
  if (source.literal.data() && !node.block) return scalar.size();
  return std::min(scalar.find_first_of(node.block ? " \t\r\n" : "\r\n"), scalar.size());
}

template <typename T>
std::span<const T> settle(std::vector<T>& stack, std::size_t from, std::pmr::memory_resource& arena) {
  const std::size_t count = stack.size() - from;
  if (count == 0) return {};
  T* first = static_cast<T*>(arena.allocate(count * sizeof(T), alignof(T)));
  std::uninitialized_copy(stack.begin() + static_cast<std::ptrdiff_t>(from), stack.end(), first);
  stack.resize(from);
  return {first, count};
}

}  // namespace

TreeBuilder::TreeBuilder(const YamlInput& input, std::pmr::memory_resource& arena, Diagnostics& sink)
    : input_(input), arena_(arena), layout_(input.bytes), duplicates_(sink) {}

std::vector<int> TreeBuilder::columns() const {
  std::vector<int> columns;
  for (const Open& open : open_) columns.push_back(open.indent);
  return columns;
}

bool TreeBuilder::awaits_key() const {
  return !open_.empty() && open_.back().node->kind == Node::Kind::mapping && !open_.back().key;
}

Span TreeBuilder::span_at(EventPlace place, std::size_t length) const {
  return {input_.file, place.line + 1, place.column + 1, static_cast<int>(length)};
}

// The parser places an empty value at whatever comes next; here it stands at its key, or at its dash.
Span TreeBuilder::span_of_empty(EventPlace next) const {
  if (open_.back().key) return open_.back().key->span;
  const std::size_t dash = layout_.last_dash();
  const Text before = input_.bytes.substr(0, dash);
  const Text between = input_.bytes.substr(dash, std::max(next.at, dash) - dash);
  const auto lines_back = static_cast<int>(std::count(between.begin(), between.end(), '\n'));
  const auto column = static_cast<int>(dash - (before.rfind('\n') + 1));
  return span_at({dash, next.line - lines_back, column}, 1);
}

void TreeBuilder::check_indent(EventPlace place) const {
  if (!awaits_key()) check_value_indent(layout_, place.at, place.column, indent());
}

void TreeBuilder::add_null(EventPlace place) {
  const Text bytes = input_.bytes;
  if (place.at >= layout_.at()) layout_.walk_to(place.at);
  const std::size_t end = std::min(bytes.find_first_of(" \t\r\n,]}:#", place.at), bytes.size());
  const bool written = place.at == layout_.at() && spells_null(bytes.substr(place.at, end - place.at));
  if (written) {
    check_indent(place);
    layout_.jump_to(end);
  }
  if (open_.empty()) return add(new_node(Node::Kind::empty, span_at(place, 1)), place.at);
  const bool is_flow_item = open_.back().node->kind == Node::Kind::sequence && open_.back().node->flow;
  if (is_flow_item && !written) {
    throw SyntaxFault{place.at, 1, "empty-item",
                      "nothing stands before this mark; take out the comma too many, or write the item"};
  }
  const bool is_written_item = written && !open_.back().key;
  add(new_node(Node::Kind::empty, is_written_item ? span_at(place, end - place.at) : span_of_empty(place)),
      place.at);
}

void TreeBuilder::add_scalar(EventPlace place, Text value) {
  check_no_property(input_, place.at);
  layout_.walk_to(place.at);
  check_indent(place);
  Node* node = new_node(Node::Kind::scalar, {});
  const ScalarSource source = check_scalar(input_, layout_, place.at, indent(), value, *node);
  node->text = source.literal.data() ? source.literal : keep(value);
  node->span =
      span_at(place, marked_length(input_.bytes.substr(place.at, source.end - place.at), source, *node));
  layout_.jump_to(source.end);
  add(node, place.at);
}

void TreeBuilder::open(Node::Kind kind, bool flow, EventPlace place) {
  check_no_property(input_, place.at);
  layout_.walk_to(place.at);
  if (open_.size() >= static_cast<std::size_t>(max_depth)) {
    throw SyntaxFault{place.at, 1, "too-deep",
                      "nested more than " + std::to_string(max_depth) + " deep, the most that is read"};
  }
  Node* node = new_node(kind, span_at(place, 1));
  node->flow = flow;
  if (flow) enter_flow(*node, place);
  const std::size_t children = kind == Node::Kind::mapping ? pairs_.size() : items_.size();
  open_.push_back({node, place.at, flow ? indent() : place.column, children, nullptr});
}

// The one pair of [key: value] is a mapping without a bracket of its own; then its key may have one.
void TreeBuilder::enter_flow(const Node& node, EventPlace place) {
  check_indent(place);
  const char bracket = node.kind == Node::Kind::mapping ? '{' : '[';
  if (input_.bytes[place.at] != bracket) return;
  if (place.at < layout_.at()) refuse_collection_as_key(place.at);
  layout_.enter_flow(indent());
}

void TreeBuilder::close() {
  const Open done = open_.back();
  open_.pop_back();
  if (done.node->kind == Node::Kind::sequence) {
    done.node->items = settle(items_, done.children, arena_);
  } else {
    done.node->pairs = settle(pairs_, done.children, arena_);
    duplicates_.check(done.node->pairs);
  }
  add(done.node, done.at);
}

void TreeBuilder::end() { layout_.walk_to(input_.text_size); }

void TreeBuilder::add(Node* node, std::size_t at) {
  if (open_.empty()) {
    root_ = node;
  } else if (open_.back().node->kind == Node::Kind::sequence) {
    items_.push_back(node);
  } else if (awaits_key()) {
    check_key(input_, layout_, at, *node);
    open_.back().key = node;
  } else {
    const Node* key = open_.back().key;
    pairs_.push_back({key->text, key->span, node});
    open_.back().key = nullptr;
  }
}

Node* TreeBuilder::new_node(Node::Kind kind, Span span) {
  Node* node = new (arena_.allocate(sizeof(Node), alignof(Node))) Node;
  node->kind = kind;
  node->span = span;
  return node;
}

Text TreeBuilder::keep(Text text) {
  char* kept = static_cast<char*>(arena_.allocate(text.size() + 1, 1));
  std::copy(text.begin(), text.end(), kept);
  return {kept, text.size()};
}

}  // namespace sheafc
