// SPDX-License-Identifier: GPL-2.0-or-later
// A printed table or a page of torques, typed into a spreadsheet, becomes the body of a sheet.
#include <algorithm>
#include <map>

#include "compiler/sheet/forms.h"
#include "compiler/sheet/new_sheet.h"
#include "compiler/sheet/read_fields.h"
#include "compiler/sheet/read_scalar.h"
#include "compiler/sheet/scalar_style.h"
#include "compiler/sheet/sheet_rules.h"
#include "compiler/sheet/suggestion.h"

namespace sheafc {
namespace {

using sheaf::FieldDeclaration;

// "torque (N·m)" -> "torque" and "N·m"
struct Heading {
  std::string key, unit;
};
Heading heading_of(const std::string& text) {
  const auto open = text.find('(');
  if (open == std::string::npos || text.back() != ')') return {kebab_case(text), {}};
  return {kebab_case(text.substr(0, open)), text.substr(open + 1, text.size() - open - 2)};
}

bool is_bare_number(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789.,+-±/ ") == std::string_view::npos;
}

void report(Diagnostics& sink, std::string_view rule, const CsvCell& cell, const sheaf::Failure& failure) {
  Span where = cell.where;
  const bool as_written =
      static_cast<int>(cell.text.size()) == where.length;  // no quotes, so bytes can be counted
  if (failure.length > 0 && as_written) {
    where.column += std::min(failure.at, where.length - 1);
    where.length = failure.length;
  }
  sink.error(rule, where, failure.message);
}

class EntryMaker {
 public:
  EntryMaker(const CsvTable& csv, const sheaf::KindDeclaration& kind, Diagnostics& sink)
      : csv_(csv), kind_(kind), sink_(sink) {}

  std::string make() {
    read_header();
    std::string body = std::string(kind_.section) + ":\n";
    for (const auto& row : csv_.rows) body += entry(row);
    return body;
  }

 private:
  void read_header() {
    std::vector<std::string_view> keys = {"id"};
    for (const FieldDeclaration* field : entry_scope(kind_)) keys.push_back(field->key);
    for (const CsvCell& cell : csv_.header) {
      headings_.push_back(heading_of(cell.text));
      const std::string& key = headings_.back().key;
      fields_.push_back(find_in(entry_scope(kind_), key));
      if (fields_.back() || key == "id") continue;
      sink_.error(rule::unknown_key, cell.where,
                  with_article(kind_.name) + " has no key '" + key + "'" + did_you_mean(key, keys));
    }
  }

  std::string entry(const std::vector<CsvCell>& row) {
    if (row.size() > headings_.size()) {
      sink_.error(rule::row_width, row[headings_.size()].where,
                  "the row has " + std::to_string(row.size()) + " cells where the header has " +
                      std::to_string(headings_.size()));
      return {};
    }
    std::string id, name, lines;
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (row[i].text.empty()) continue;
      if (headings_[i].key == "id") id = row[i].text;
      if (headings_[i].key == "name") name = row[i].text;
      if (fields_[i]) lines += pair(*fields_[i], headings_[i], row[i]);
    }
    return "  " + checked_id(row.front(), id.empty() ? kebab_case(name) : id) + ":\n" + lines;
  }

  std::string checked_id(const CsvCell& at, const std::string& id) {
    if (id.empty()) {
      sink_.error(rule::missing_key, at.where, "the row needs an id or a name");
      return "none";
    }
    if (const auto name = parse_name(id); !name)
      sink_.error(rule::bad_name, at.where, name.failure().message);
    const auto [first, is_new] = ids_.emplace(id, at.where);
    if (!is_new) {
      sink_.report({Severity::error,
                    rule::duplicate_row,
                    at.where,
                    "two rows are named '" + id + "'",
                    {{Severity::note, rule::duplicate_row, first->second, "the other one"}}});
    }
    return id;
  }

  std::string pair(const FieldDeclaration& field, const Heading& heading, const CsvCell& cell) {
    const std::string text =
        !heading.unit.empty() && is_bare_number(cell.text) ? cell.text + " " + heading.unit : cell.text;
    if (field.type >= sheaf::ValueType::record) {
      sink_.error(rule::wrong_shape, cell.where,
                  "'" + std::string(field.key) + "' does not fit into one cell; add it to the sheet");
      return {};
    }
    const auto read = read_scalar(field, text);
    if (!read) {
      const bool comma = field.type != sheaf::ValueType::text && decimal_comma(text) != std::string::npos;
      report(sink_, comma ? rule::decimal_comma : rule_of(field.type), cell,
             comma ? sheaf::Failure{"a decimal is written with a point"} : read.failure());
      return {};
    }
    return "    " + std::string(field.key) + ": " + as_scalar(read->text, false) + "\n";
  }

  const CsvTable& csv_;
  const sheaf::KindDeclaration& kind_;
  Diagnostics& sink_;
  std::vector<Heading> headings_;
  std::vector<const FieldDeclaration*> fields_;
  std::map<std::string, Span> ids_;
};

// A column is a unit where its heading names one, else a thread, size or bearing by its name, else text.
std::string type_of(const Heading& heading) {
  if (!heading.unit.empty()) return heading.unit;
  for (const char* type : {"thread", "size", "bearing"}) {
    if (heading.key == type) return type;
  }
  return "text";
}

std::string row_line(const CsvTable& csv, const std::vector<CsvCell>& row, Diagnostics& sink) {
  if (row.size() != csv.header.size()) {
    sink.error(rule::row_width, row.front().where,
               "the row has " + std::to_string(row.size()) + " cells where the header has " +
                   std::to_string(csv.header.size()));
  }
  std::string line;
  for (const CsvCell& cell : row)
    line += (line.empty() ? "  - [" : ", ") + (cell.text.empty() ? "--" : as_scalar(cell.text, true));
  return line + "]\n";
}

}  // namespace

std::string entries_from_csv(const CsvTable& csv, std::string_view kind, Diagnostics& sink) {
  return EntryMaker(csv, *sheaf::kind_named(kind), sink).make();
}

std::string rows_from_csv(const CsvTable& csv, Diagnostics& sink) {
  std::string columns, key;
  for (const CsvCell& cell : csv.header) {
    const Heading heading = heading_of(cell.text);
    if (const auto name = parse_name(heading.key); !name)
      sink.error(rule::bad_name, cell.where, "the column has no name");
    if (key.empty()) key = heading.key;
    columns += "  " + heading.key + ": " + as_scalar(type_of(heading), false) + "\n";
  }
  std::string body = "key: " + key + "\ncolumns:\n" + columns + "rows:\n";
  for (const auto& row : csv.rows) body += row_line(csv, row, sink);
  return body;
}

}  // namespace sheafc
