// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/match_csv.h"

#include <algorithm>
#include <array>
#include <utility>

#include "query/answer/csv.h"
#include "query/answer/match_row.h"
#include "query/answer/match_shelf.h"
#include "query/library/fold.h"
#include "query/trade/measured.h"

namespace sheaf {
namespace {

using Cells = std::vector<std::string>;

char separator_of(std::string_view text) {
  const auto start = std::min(text.find_first_not_of("\r\n"), text.size());  // blank lines tell nothing
  const auto line = text.substr(start, text.find('\n', start) - start);
  if (line.find(';') != std::string_view::npos) return ';';
  return line.find('\t') != std::string_view::npos ? '\t' : ',';
}

struct CsvRow {
  Cells cells;
  std::string fault;
};

// One line of the text, quotes as in RFC 4180. A cell does not go over several lines: a quote that is never
// closed is the fault of its own row alone.
CsvRow take_row(std::string_view& text, char separator) {
  const std::string_view line = text.substr(0, text.find('\n'));
  text.remove_prefix(std::min(line.size() + 1, text.size()));
  CsvRow row;
  std::string cell;
  bool quoted = false;
  for (std::size_t at = 0; at < line.size(); ++at) {
    const char sign = line[at];
    const bool doubled = quoted && sign == '"' && at + 1 < line.size() && line[at + 1] == '"';
    if (doubled) {
      cell += line[at++];
    } else if (sign == '"') {
      quoted = !quoted;
    } else if (sign == separator && !quoted) {
      row.cells.push_back(std::move(cell));
      cell.clear();
    } else if (sign != '\r') {
      cell += sign;
    }
  }
  if (quoted) row.fault = "a quote is never closed on its line";
  row.cells.push_back(std::move(cell));
  return row;
}

enum class Column { other, part, size, inside, outside, height };

struct ColumnName {
  std::string_view name;
  Column column;
};
constexpr std::array<ColumnName, 16> column_names = {{{"part", Column::part},
                                                      {"kind", Column::part},
                                                      {"size", Column::size},
                                                      {"designation", Column::size},
                                                      {"inside", Column::inside},
                                                      {"id", Column::inside},
                                                      {"bore", Column::inside},
                                                      {"shaft", Column::inside},
                                                      {"tube", Column::inside},
                                                      {"outside", Column::outside},
                                                      {"od", Column::outside},
                                                      {"housing", Column::outside},
                                                      {"height", Column::height},
                                                      {"width", Column::height},
                                                      {"section", Column::height},
                                                      {"length", Column::height}}};

// "inside mm" names what "inside" does; "inside in" makes inches of bare numbers.
struct ColumnRead {
  Column column = Column::other;
  bool inches = false;
};
ColumnRead column_named(std::string_view heading) {
  std::string name = fold(heading);
  ColumnRead read;
  for (const std::string_view unit : {" mm", " (mm)", " in", " (in)"}) {
    if (!name.ends_with(unit)) continue;
    name.resize(name.size() - unit.size());
    read.inches = unit.find("in") != std::string_view::npos;
    break;
  }
  const auto found = std::ranges::find(column_names, name, &ColumnName::name);
  if (found != column_names.end()) read.column = found->column;
  return read;
}

bool is_heading(const Cells& cells) {
  return std::ranges::none_of(
      cells, [](const std::string& cell) { return cell.find_first_of("0123456789") != std::string::npos; });
}

bool is_blank(const Cells& cells) {
  return std::ranges::all_of(
      cells, [](const std::string& cell) { return cell.find_first_not_of(" \t") == std::string::npos; });
}

class Batch {
 public:
  Batch(const MatchLimits& limits, Shelf& shelf) : limits_(limits), shelf_(shelf) {}

  void take_heading(const Cells& cells) {
    for (const auto& cell : cells) columns_.push_back(column_named(cell));
  }

  Result<Matches> answer(const Cells& cells) const {
    return columns_.empty() ? of_all(cells) : of_columns(cells);
  }

 private:
  Result<Matches> of_text(const std::string& text) const { return match({text, limits_}, shelf_); }

  // Numbers that stand in cells of their own are the dimensions in their order.
  Result<Matches> of_all(const Cells& cells) const {
    std::string text;
    bool number_before = false;
    for (const auto& cell : cells) {
      if (cell.empty()) continue;
      const bool number = parse_number(cell, Input::prompt) ? true : false;
      text += text.empty() ? "" : number && number_before ? " x " : " ";
      text += cell;
      number_before = number;
    }
    return of_text(text);
  }

  Result<Matches> of_columns(const Cells& cells) const {
    std::string part, size;
    Measured measured;
    for (std::size_t i = 0; i < std::min(cells.size(), columns_.size()); ++i) {
      const std::string& cell = cells[i];
      if (cell.empty() || columns_[i].column == Column::other) continue;
      if (columns_[i].column == Column::part)
        part = cell;
      else if (columns_[i].column == Column::size && !size.empty())
        return Failure{"the row has two sizes"};
      else if (columns_[i].column == Column::size)
        size = cell;
      else if (auto fault = add(measured, cell, columns_[i]))
        return *fault;
    }
    const PartNamed named = take_part(part);
    if (!part.empty() && !named.part)
      return Failure{"'" + part + "' is no part that is matched: seal, o-ring, bearing, bushing, thread"};
    if (!measured.mm.empty() && !size.empty()) return Failure{"the row has a size and dimensions of its own"};
    if (!size.empty()) return of_text(part.empty() ? size : part + " " + size);
    if (measured.mm.empty()) return Failure{"the row has no size"};
    return match_measured(measured, named, limits_, shelf_);
  }

  static std::optional<Failure> add(Measured& measured, const std::string& cell, const ColumnRead& column) {
    const bool bare = bool(parse_number(with_leading_zeros(cell), Input::prompt));
    const auto read = parse_measured(bare && column.inches ? cell + " in" : cell, Input::prompt);
    if (!read) return Failure{"'" + cell + "': " + read.failure().message};
    if (read->mm.size() != 1) return Failure{"'" + cell + "' is more than one dimension"};
    const Role role = column.column == Column::inside    ? Role::inside
                      : column.column == Column::outside ? Role::outside
                                                         : Role::height;
    if (std::ranges::find(measured.roles, role) != measured.roles.end())
      return Failure{"the " + std::string(name_of(role)) + " is given twice"};
    measured.mm.push_back(read->mm.front());
    measured.roles.push_back(role);
    return std::nullopt;
  }

  const MatchLimits& limits_;
  Shelf& shelf_;
  std::vector<ColumnRead> columns_;
};

constexpr std::array<std::string_view, 11> answer_columns = {"verdict", "matched size", "name",    "address",
                                                             "count",   "order",        "differs", "others",
                                                             "note",    "fault",        "library"};

Cells cells_of(std::string verdict, const MatchedPart& part, std::size_t parts) {
  std::string differs = part.differs.empty() ? part.within : part.differs;
  if (!part.usual_order)
    differs += (differs.empty() ? "" : "; ") + std::string("in another order than written");
  return {std::move(verdict),
          part.size,
          part.entry.name,
          part.entry.address,
          part.count,
          part.number.numbers.empty() ? "" : part.number.order(),
          std::move(differs),
          std::to_string(parts - 1),
          part.details + part.number.caveat,  // a thread has no number
          "",
          part.entry.library};
}

Cells fault_cells(std::string message) {
  Cells cells(answer_columns.size());
  cells.front() = "fault";
  cells[cells.size() - 2] = std::move(message);
  return cells;
}

// What is best of a row's matches, alone; its number is looked up here, for it alone.
Result<Cells> verdict_cells(Matches matches, Shelf& shelf) {
  const std::array<std::pair<const char*, std::vector<MatchedPart>*>, 4> lists = {
      {{"fits", &matches.same},
       {"within", &matches.within},
       {"other use", &matches.other_use},
       {"NOT the same", &matches.near}}};
  for (const auto& [verdict, parts] : lists) {
    if (parts->empty()) continue;
    std::vector<MatchedPart> best = {parts->front()};
    if (auto fault = add_numbers(best, shelf.libraries())) return *fault;
    return cells_of(verdict, best.front(), parts->size());
  }
  Cells cells(answer_columns.size());
  cells.front() = "nothing";
  return cells;
}

// Rows go back as they came, with the separator that they came with.
class BatchWriter {
 public:
  explicit BatchWriter(char separator) : separator_(separator) {}

  void add(const Cells& cells, Cells verdict) {
    if (width_ == 0) width_ = cells.size();
    Cells row = cells;
    row.resize(std::max(row.size(), width_));
    std::ranges::move(verdict, std::back_inserter(row));
    text_ += csv_row(row, separator_);
  }
  std::string take() && { return std::move(text_); }

 private:
  char separator_;
  std::size_t width_ = 0;  // of the first row
  std::string text_;
};

}  // namespace

Result<MatchedBatch> match_csv(std::string_view text, const MatchLimits& limits,
                               const std::vector<Library*>& libraries) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  const char separator = separator_of(text);
  Shelf shelf(libraries);
  Batch batch(limits, shelf);
  BatchWriter writer(separator);
  MatchedBatch result;
  for (bool may_be_heading = true; !text.empty();) {
    const CsvRow row = take_row(text, separator);
    if (is_blank(row.cells)) {
      writer.add(row.cells, Cells(answer_columns.size()));
      continue;
    }
    if (std::exchange(may_be_heading, false) && is_heading(row.cells)) {
      batch.take_heading(row.cells);
      writer.add(row.cells, Cells(answer_columns.begin(), answer_columns.end()));
      continue;
    }
    ++result.rows;
    const auto matches = row.fault.empty() ? batch.answer(row.cells) : Result<Matches>(Failure{row.fault});
    if (!matches) {
      ++result.faults;
      writer.add(row.cells, fault_cells(matches.failure().message));
      continue;
    }
    if (matches->found()) ++result.found;
    auto verdict = verdict_cells(*matches, shelf);
    if (!verdict) return verdict.failure();
    writer.add(row.cells, std::move(verdict).value());
  }
  result.csv = std::move(writer).take();
  return result;
}

}  // namespace sheaf
