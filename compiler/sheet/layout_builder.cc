// SPDX-License-Identifier: GPL-2.0-or-later
// Walks the tree beside the declarations, as read_sheet.cc does, so that each scalar is written in the
// canonical spelling of its type. What is written canonically already keeps its own bytes, quotes and all.
#include "compiler/sheet/layout_builder.h"

#include <algorithm>

#include "compiler/sheet/read_scalar.h"
#include "compiler/sheet/scalar_style.h"

namespace sheafc {
namespace {

using sheaf::FieldDeclaration;
using sheaf::ValueType;
using Kind = LayoutValue::Kind;

class Builder {
 public:
  Builder(const Sheet& sheet, const SourceFile& file) : sheet_(sheet), file_(file) {}

  LayoutValue sheet();

 private:
  LayoutValue mapping(const Node& node, const Scope& scope, const sheaf::KindDeclaration* kind, bool in_flow);
  LayoutValue field(const FieldDeclaration& declaration, const Node& node, const sheaf::KindDeclaration* kind,
                    bool in_flow);
  LayoutValue one(const FieldDeclaration& declaration, const Node& node, bool in_flow);
  LayoutValue allowances(const Node& node, bool in_flow);
  LayoutValue variants(const Node& node, const sheaf::KindDeclaration& kind, bool in_flow);
  LayoutValue block(const BlockDeclaration& block, const Node& node);
  LayoutValue named(const Node& node, const Scope& scope, const sheaf::KindDeclaration* kind);
  LayoutValue columns(const Node& node);
  LayoutValue rows(const Node& node);
  LayoutValue scalar(const Node& node, const std::string& canonical, bool in_flow);
  LayoutItem item(const Pair& pair, int rank, LayoutValue value) const;
  LayoutItem item(const Node& node, LayoutValue value) const;

  const Sheet& sheet_;
  const SourceFile& file_;
};

int rank_in(const Scope& scope, std::string_view key) {
  const auto found = std::ranges::find(scope, key, [](const FieldDeclaration* field) { return field->key; });
  return static_cast<int>(found - scope.begin());
}

LayoutValue collection(Kind kind, const Node& node) {
  LayoutValue value;
  value.kind = kind;
  value.flow = node.flow;
  return value;
}

LayoutItem Builder::item(const Pair& pair, int rank, LayoutValue value) const {
  LayoutItem item;
  item.key = as_scalar(pair.key, true);
  item.value = std::move(value);
  item.line = pair.key_span.line;
  item.column = pair.key_span.column;
  item.rank = rank;
  return item;
}

// In a block sequence, an item starts at its dash.
LayoutItem Builder::item(const Node& node, LayoutValue value) const {
  LayoutItem item;
  item.value = std::move(value);
  item.line = node.span.line;
  item.column = std::max(node.span.column - 2, 1);
  return item;
}

LayoutValue Builder::scalar(const Node& node, const std::string& canonical, bool in_flow) {
  LayoutValue value;
  const std::string_view line = file_.line(node.span.line);
  const std::string_view written =
      line.substr(static_cast<std::size_t>(node.span.column - 1), static_cast<std::size_t>(node.span.length));
  const bool one_line =
      node.quoted ? written.size() > 1 && written.back() == written.front() : written == node.text;
  value.text = one_line && canonical == node.text ? std::string(written) : as_scalar(canonical, in_flow);
  value.folded = !in_flow && !one_line;
  return value;
}

LayoutValue Builder::one(const FieldDeclaration& declaration, const Node& node, bool in_flow) {
  if (declaration.type == ValueType::record)
    return mapping(node, record_scope(declaration), nullptr, in_flow);
  const auto read = read_scalar(declaration, node.text);
  return scalar(node, read ? read->text : std::string(node.text), in_flow);
}

LayoutValue Builder::field(const FieldDeclaration& declaration, const Node& node,
                           const sheaf::KindDeclaration* kind, bool in_flow) {
  if (declaration.type == ValueType::allowances) return allowances(node, in_flow);
  if (declaration.type == ValueType::variants && kind) return variants(node, *kind, in_flow);
  if (node.kind != Node::Kind::sequence) return one(declaration, node, in_flow);
  LayoutValue list = collection(Kind::sequence, node);
  for (const Node* element : node.items)
    list.items.push_back(item(*element, one(declaration, *element, in_flow || node.flow)));
  return list;
}

LayoutValue Builder::mapping(const Node& node, const Scope& scope, const sheaf::KindDeclaration* kind,
                             bool in_flow) {
  LayoutValue map = collection(Kind::mapping, node);
  for (const Pair& pair : node.pairs) {
    const FieldDeclaration* declaration = find_in(scope, pair.key);
    if (!declaration) continue;  // the sheet has no fault, so there is none
    map.items.push_back(
        item(pair, rank_in(scope, pair.key), field(*declaration, *pair.value, kind, in_flow || node.flow)));
  }
  return map;
}

LayoutValue Builder::allowances(const Node& node, bool in_flow) {
  const FieldDeclaration& reason = *find_in(allowance_scope(), "reason");
  LayoutValue map = collection(Kind::mapping, node);
  for (const Pair& pair : node.pairs) {
    const bool flow = in_flow || node.flow;
    const bool dated = pair.value->kind == Node::Kind::mapping;
    map.items.push_back(item(
        pair, 0,
        dated ? mapping(*pair.value, allowance_scope(), nullptr, flow) : one(reason, *pair.value, flow)));
  }
  return map;
}

LayoutValue Builder::variants(const Node& node, const sheaf::KindDeclaration& kind, bool in_flow) {
  LayoutValue list = collection(Kind::sequence, node);
  for (const Node* variant : node.items) {
    list.items.push_back(
        item(*variant, mapping(*variant, variant_scope(kind), nullptr, in_flow || node.flow)));
  }
  return list;
}

LayoutValue Builder::named(const Node& node, const Scope& scope, const sheaf::KindDeclaration* kind) {
  LayoutValue map = collection(Kind::mapping, node);
  for (const Pair& pair : node.pairs)
    map.items.push_back(item(pair, 0, mapping(*pair.value, scope, kind, node.flow)));
  return map;
}

LayoutValue Builder::columns(const Node& node) {
  LayoutValue map = collection(Kind::mapping, node);
  for (std::size_t i = 0; i < node.pairs.size(); ++i) {
    const Pair& pair = node.pairs[i];
    const Column& column = sheet_.columns[i];
    map.items.push_back(item(
        pair, 0,
        scalar(*pair.value, std::string(column.unit ? column.unit->symbol : pair.value->text), node.flow)));
  }
  return map;
}

LayoutValue Builder::rows(const Node& node) {
  LayoutValue list = collection(Kind::sequence, node);
  list.aligned = true;
  for (const Node* row : node.items) {
    LayoutValue cells = collection(Kind::sequence, *row);
    for (std::size_t i = 0; i < row->items.size(); ++i) {
      const Node& cell = *row->items[i];
      const Column& column = sheet_.columns[i];
      const bool unitless = column.type == Column::Type::figure || column.type == Column::Type::number;
      const auto read =
          unitless ? sheaf::Result<Scalar>(sheaf::Failure{}) : read_scalar(*column.declaration, cell.text);
      cells.items.push_back(item(cell, scalar(cell, read ? read->text : std::string(cell.text), true)));
    }
    list.items.push_back(item(*row, std::move(cells)));
  }
  return list;
}

LayoutValue Builder::block(const BlockDeclaration& block, const Node& node) {
  if (block.kind) return named(node, entry_scope(*block.kind), block.kind);
  if (block.key == "columns") return columns(node);
  if (block.key == "rows") return rows(node);
  return named(node, block.key == "words" ? word_group_scope() : caution_scope(), nullptr);
}

LayoutValue Builder::sheet() {
  const FormDeclaration& form = *sheet_.form;
  const Node& root = *file_.root();
  LayoutValue map = collection(Kind::mapping, root);
  map.flow = false;
  for (const Pair& pair : root.pairs) {
    if (const FieldDeclaration* declaration = find_in(form.fields, pair.key)) {
      map.items.push_back(
          item(pair, rank_in(form.fields, pair.key), field(*declaration, *pair.value, nullptr, root.flow)));
      continue;
    }
    const auto block_at = std::ranges::find(form.blocks, pair.key, &BlockDeclaration::key);
    if (block_at == form.blocks.end()) continue;
    const int rank = static_cast<int>(form.fields.size()) + static_cast<int>(block_at - form.blocks.begin());
    map.items.push_back(item(pair, rank, block(*block_at, *pair.value)));
  }
  return map;
}

}  // namespace

LayoutValue layout_of(const Sheet& sheet, const SourceFile& file) { return Builder(sheet, file).sheet(); }

}  // namespace sheafc
