// SPDX-License-Identifier: GPL-2.0-or-later
// Builds the located tree bottom up from a parser's events, checking each against the bytes. Children wait
// on two stacks, one for items and one for pairs, until their collection ends; then they move into the
// arena in one piece. All steps throw SyntaxFault.
#pragma once

#include <cstddef>
#include <memory_resource>
#include <string_view>
#include <vector>

#include "compiler/source/duplicate_keys.h"
#include "compiler/source/layout.h"
#include "compiler/source/node.h"

namespace sheafc {

struct YamlInput;

// Where an event's node starts: byte, line and column, all from 0.
struct EventPlace {
  std::size_t at;
  int line;
  int column;
};

class TreeBuilder {
 public:
  TreeBuilder(const YamlInput& input, std::pmr::memory_resource& arena, Diagnostics& sink);

  void add_null(EventPlace place);
  void add_scalar(EventPlace place, std::string_view value);
  void open(Node::Kind kind, bool flow, EventPlace place);
  void close();
  void end();  // of the sheet

  const Node* root() const { return root_; }
  const Layout& layout() const { return layout_; }
  std::vector<int> columns() const;  // of the open collections' blocks, outermost first

 private:
  struct Open {
    Node* node;
    std::size_t at;
    int indent;            // of the innermost block collection, this one included
    std::size_t children;  // where they start on their stack
    const Node* key;       // of a mapping, when its value is awaited
  };

  int indent() const { return open_.empty() ? -1 : open_.back().indent; }
  bool awaits_key() const;
  Span span_at(EventPlace place, std::size_t length) const;
  Span span_of_empty(EventPlace next) const;
  void check_indent(EventPlace place) const;
  void enter_flow(const Node& node, EventPlace place);
  void add(Node* node, std::size_t at);
  Node* new_node(Node::Kind kind, Span span);
  std::string_view keep(std::string_view text);

  const YamlInput& input_;
  std::pmr::memory_resource& arena_;
  Layout layout_;
  DuplicateKeys duplicates_;
  std::vector<Open> open_;
  std::vector<const Node*> items_;
  std::vector<Pair> pairs_;
  const Node* root_ = nullptr;
};

}  // namespace sheafc
