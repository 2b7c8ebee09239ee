// SPDX-License-Identifier: GPL-2.0-or-later
// A published table: columns with their types, rows with a cell for each. A row becomes an entry whose
// fields are the columns and whose id is the cell of the key column in kebab-case.
#include <algorithm>
#include <unordered_map>

#include "compiler/sheet/read_scalar.h"
#include "compiler/sheet/read_sections.h"
#include "compiler/sheet/sheet_rules.h"
#include "compiler/sheet/suggestion.h"

namespace sheafc {
namespace {

using sheaf::ValueType;

struct NamedType {
  std::string_view name;
  Column::Type type;
  ValueType value;
};
constexpr NamedType named_types[] = {{"thread", Column::Type::thread, ValueType::thread},
                                     {"size", Column::Type::size, ValueType::size},
                                     {"bearing", Column::Type::bearing, ValueType::bearing},
                                     {"text", Column::Type::text, ValueType::text},
                                     {"number", Column::Type::number, ValueType::text},
                                     {"choice", Column::Type::choice, ValueType::text}};

class TableReader {
 public:
  explicit TableReader(FieldReader& reader) : reader_(reader), sheet_(reader.sheet()) {}

  void read_columns(const Node& node);
  void check_key();
  void read_rows(const Node& node);

 private:
  void read_column(const Pair& pair);
  void read_row(const Node& node);
  const Field* read_one_cell(const Column& column, const Node& cell);
  void name_row(const Node& node, Fields fields);

  FieldReader& reader_;
  Sheet& sheet_;
  bool columns_whole_ = true;
  std::unordered_map<std::string, Span> rows_;  // id to the place of the row that has it
};

void TableReader::read_columns(const Node& node) {
  if (!reader_.expect_mapping(node, "'columns'")) return;
  sheet_.columns.reserve(node.pairs.size());
  for (const Pair& pair : node.pairs) read_column(pair);
}

void TableReader::read_column(const Pair& pair) {
  const Node& type = *pair.value;
  reader_.expect_name(pair.key, pair.key_span);
  columns_whole_ = columns_whole_ && type.kind == Node::Kind::scalar;
  if (type.kind != Node::Kind::scalar) {
    if (type.kind == Node::Kind::empty)
      reader_.report_empty(type);
    else
      reader_.sink().error(rule::wrong_shape, type.span,
                           "a column's type is a unit, or thread, size, bearing, text, number or choice");
    return;
  }
  auto column = column_of(pair.key, type.text, sheet_);
  if (!column) {
    columns_whole_ = false;
    const auto unit = sheaf::unit_from(type.text);
    reader_.report_unreadable(
        rule::bad_column, type,
        {unit.failure().message + "; or thread, size, bearing, text, number or choice", 0, 0});
    return;
  }
  column->place = pair.key_span;
  sheet_.columns.push_back(*column);
}

void TableReader::check_key() {
  const Value* key = sheet_.fields.value("key");
  if (!key || key->text.empty() || !columns_whole_) return;
  std::vector<std::string_view> names;
  for (const Column& column : sheet_.columns) names.push_back(column.name);
  if (std::ranges::find(names, key->text) != names.end())
    sheet_.key_column = key->text;
  else
    reader_.sink().error(rule::bad_column, key->where,
                         "there is no column '" + key->text + "'" + did_you_mean(key->text, names));
}

void TableReader::read_rows(const Node& node) {
  if (node.kind == Node::Kind::empty) return reader_.report_empty(node);
  if (node.kind != Node::Kind::sequence || node.items.empty()) {
    return reader_.sink().error(rule::wrong_shape, node.span,
                                "'rows' is a list of rows, each a list of cells");
  }
  if (!columns_whole_ || sheet_.columns.empty()) return;  // reported; every row would only repeat it
  sheet_.entries.reserve(node.items.size());
  for (const Node* row : node.items) read_row(*row);
}

void TableReader::read_row(const Node& node) {
  if (node.kind == Node::Kind::empty) return reader_.report_empty(node);
  if (node.kind != Node::Kind::sequence) {
    return reader_.sink().error(rule::wrong_shape, node.span, "a row is a list of cells, as [M8x1.25, 1.25]");
  }
  if (node.items.size() != sheet_.columns.size()) {
    return reader_.sink().report(
        {Severity::error,
         rule::row_width,
         node.span,
         "the row has " + std::to_string(node.items.size()) + " cells where the table has " +
             std::to_string(sheet_.columns.size()) + " columns",
         {{Severity::note, rule::row_width, sheet_.columns.front().place, "the columns stand here"}}});
  }
  Fields fields;
  const int faults = reader_.sink().errors();
  for (std::size_t i = 0; i < node.items.size(); ++i) {
    if (const Field* field = read_one_cell(sheet_.columns[i], *node.items[i])) fields.add(field);
  }
  const bool key_unreadable = !fields.has(sheet_.key_column) && reader_.sink().errors() > faults;
  if (!key_unreadable) name_row(node, std::move(fields));
}

const Field* TableReader::read_one_cell(const Column& column, const Node& cell) {
  if (cell.kind == Node::Kind::empty) {
    reader_.report_empty(cell);
    return nullptr;
  }
  if (cell.kind != Node::Kind::scalar) {
    reader_.sink().error(rule::wrong_shape, cell.span, "a cell is a single value");
    return nullptr;
  }
  if (cell.text == "-" || cell.text == "--") return nullptr;  // YAML wants quotes round a lone -
  auto scalar = read_cell(column, cell.text);
  if (!scalar) {
    const bool numeric = column.type == Column::Type::number || column.type == Column::Type::figure;
    reader_.report_unreadable(numeric ? rule::unreadable_number : rule_of(column.declaration->type), cell,
                              scalar.failure());
    return nullptr;
  }
  Scalar read = std::move(scalar).value();
  Field field{column.declaration, column.place, {}};
  field.values.push_back({std::move(read.text), std::move(read.meaning), cell.span});
  return sheet_.keep(std::move(field));
}

void TableReader::name_row(const Node& node, Fields fields) {
  if (sheet_.key_column.empty()) return;  // reported
  const Value* key = fields.value(sheet_.key_column);
  const std::string id = key ? kebab_case(key->text) : "";
  if (id.empty()) {
    return reader_.sink().error(
        rule::row_without_key, node.span,
        "the row has no name: its cell of the column '" + std::string(sheet_.key_column) + "' says nothing");
  }
  const auto [first, is_new] = rows_.emplace(id, key->where);
  if (!is_new) {
    return reader_.sink().report({Severity::error,
                                  rule::duplicate_row,
                                  key->where,
                                  "two rows are named '" + id + "'",
                                  {{Severity::note, rule::duplicate_row, first->second, "the other one"}}});
  }
  sheet_.entries.push_back({id, sheet_.row_kind, nullptr, key->where, std::move(fields)});
}

}  // namespace

std::optional<Column> column_of(std::string_view name, std::string_view type, Sheet& sheet) {
  name = sheet.keep(std::string(name));
  Column column{name, Column::Type::figure, nullptr, nullptr, {}};
  sheaf::FieldDeclaration declaration{.key = name, .type = ValueType::figure, .help = {}};
  const auto* named = std::ranges::find(named_types, type, &NamedType::name);
  if (named != std::end(named_types)) {
    column.type = named->type;
    declaration.type = named->value;
  } else {
    const auto unit = sheaf::unit_from(type);
    if (!unit) return {};
    column.unit = *unit;
    declaration.dimension = (*unit)->dimension;
  }
  column.declaration = &sheet.kept_declarations.emplace_back(declaration);
  return column;
}

void read_table(FieldReader& reader, const Node* columns, const Node* rows) {
  TableReader table(reader);
  if (columns) table.read_columns(*columns);
  table.check_key();
  if (rows) table.read_rows(*rows);
}

}  // namespace sheafc
