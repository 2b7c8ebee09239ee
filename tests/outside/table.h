// SPDX-License-Identifier: GPL-2.0-or-later
// Published values that tests check against: CSV files in this folder, each with its sources, and the rows
// of the table sheets in specs-yaml/standards. A missing file or column fails the test, it never skips.
#pragma once

#include <charconv>
#include <fstream>
#include <map>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace outside {

using Row = std::map<std::string, std::string>;

inline std::vector<std::string> split_cells(std::string_view line) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (char sign : line) {
    if (sign == '"')
      quoted = !quoted;
    else if (sign == ',' && !quoted)
      cells.emplace_back();
    else
      cells.back() += sign;
  }
  return cells;
}

inline std::string trimmed(std::string text) {
  text.erase(0, text.find_first_not_of(" \t"));
  text.erase(text.find_last_not_of(" \t\r") + 1);
  return text;
}

// Lines that begin with # are remarks; the first other line names the columns.
inline std::vector<Row> csv(const std::string& name) {
  std::ifstream file("tests/outside/" + name);
  if (!file) throw std::runtime_error("tests/outside/" + name + " is missing");
  std::vector<std::string> columns;
  std::vector<Row> rows;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    const auto cells = split_cells(line);
    if (columns.empty()) {
      columns = cells;
      continue;
    }
    if (cells.size() != columns.size()) throw std::runtime_error(name + ": a row of another width: " + line);
    Row row;
    for (std::size_t i = 0; i < cells.size(); ++i) row[columns[i]] = cells[i];
    rows.push_back(std::move(row));
  }
  if (rows.empty()) throw std::runtime_error(name + " has no rows");
  return rows;
}

// The rows of a table sheet, as far as its own regular layout allows a reader this simple: "columns:" lines
// name them in order, "- [a, b, c]" lines are the rows. An absent cell is "--".
inline std::vector<Row> sheet(const std::string& name) {
  std::ifstream file("specs-yaml/standards/" + name + ".yaml");
  if (!file) throw std::runtime_error("specs-yaml/standards/" + name + ".yaml is missing");
  std::vector<std::string> columns;
  std::vector<Row> rows;
  bool in_columns = false;
  for (std::string line; std::getline(file, line);) {
    if (!line.empty() && line.front() != ' ') in_columns = line.starts_with("columns:");
    const std::string text = trimmed(line);
    if (in_columns && line.starts_with("  ")) columns.push_back(text.substr(0, text.find(':')));
    if (!text.starts_with("- [") || line.front() != ' ' || in_columns) continue;
    const auto cells = split_cells(std::string_view(text).substr(3, text.rfind(']') - 3));
    if (cells.size() != columns.size()) continue;  // a list that is no row
    Row row;
    for (std::size_t i = 0; i < cells.size(); ++i) row[columns[i]] = trimmed(cells[i]);
    rows.push_back(std::move(row));
  }
  if (rows.empty()) throw std::runtime_error(name + " has no rows");
  return rows;
}

inline const std::string& text(const Row& row, const std::string& column) {
  const auto found = row.find(column);
  if (found == row.end()) throw std::runtime_error("there is no column " + column);
  return found->second;
}

inline double number(const Row& row, const std::string& column) {
  const std::string& cell = text(row, column);
  double value = 0;
  const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  if (error != std::errc() || end != cell.data() + cell.size())
    throw std::runtime_error(column + " is no number: " + cell);
  return value;
}

inline bool has(const Row& row, const std::string& column) {
  const std::string& cell = text(row, column);
  return !cell.empty() && cell != "--";
}

}  // namespace outside
