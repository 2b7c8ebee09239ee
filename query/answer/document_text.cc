// SPDX-License-Identifier: GPL-2.0-or-later
// A table's columns line up over all its rows; the last one wraps, and what has no room beside the others
// stands below them.
#include <algorithm>

#include "query/answer/document.h"
#include "query/answer/text.h"

namespace sheaf {
namespace {

constexpr int margin = 2;
constexpr int gap = 2;
constexpr int widest_column = 26;  // a longer cell wraps in its column
constexpr int remark_label = 9;

void add(Line& line, const Run& run) { line.add(run.text, run.tone); }

void add(Line& line, const Tick& tick) {
  line.add(tick.ticked ? "[x]" : "[ ]");
  if (!tick.label.empty()) line.add("\u00A0" + tick.label);
}

void add(Line& line, const Blank& blank) {
  if (!blank.label.empty()) line.add(blank.label + "\u00A0");
  if (blank.filled.empty())
    line.add(std::string(static_cast<std::size_t>(blank.width), '_'));
  else
    line.add(blank.filled, Tone::figure);
  if (!blank.unit.empty()) line.add("\u00A0" + blank.unit);
}

void add(Line&, const Break&) {}

std::vector<Line> lines_of(const Passage& passage) {
  std::vector<Line> lines(1);
  bool box_before = false;
  for (const auto& piece : passage.pieces()) {
    if (std::holds_alternative<Break>(piece)) lines.emplace_back();
    const bool is_box = std::holds_alternative<Tick>(piece) || std::holds_alternative<Blank>(piece);
    if (box_before && is_box) lines.back().add("  ");
    box_before = is_box;
    std::visit([&](const auto& each) { add(lines.back(), each); }, piece);
  }
  return lines;
}

int width_of(const Passage& passage) {
  int width = 0;
  for (const auto& line : lines_of(passage)) width = std::max(width, line.width());
  return width;
}

class TableWriter {
 public:
  TableWriter(Page& page, const FormTable& table) : page_(page), table_(table) {
    for (std::size_t i = 0; i < table.columns.size(); ++i)
      if (!table.columns[i].below) beside_.push_back(i);
    for (const std::size_t column : beside_) widths_.push_back(width_of_column(column));
  }

  void write() {
    for (const auto& remark : table_.over) write_remark(remark, margin);
    if (!table_.over.empty()) page_.blank();
    for (const auto& row : table_.rows) write(row);
  }

 private:
  int width_of_column(std::size_t column) const {
    int width = 0;
    for (const auto& row : table_.rows) width = std::max(width, width_of(row.cells[column]));
    return std::min(width, widest_column);
  }

  // Columns from the left as far as they fit; the last of them takes the rest of the width.
  void write(const FormRow& row) {
    if (!row.group.empty()) page_.line(Line(row.group, Tone::quiet), margin);
    std::vector<std::vector<Line>> cells;
    std::size_t height = 0;
    const int last_at = at_column(beside_.size() - 1);
    for (std::size_t i = 0; i < beside_.size(); ++i) {
      const bool is_last = i + 1 == beside_.size();
      const int width = is_last ? std::max(page_.style().width - last_at, 20) : widths_[i];
      std::vector<Line> lines;
      for (const auto& line : lines_of(row.cells[beside_[i]]))
        for (auto& piece : line.wrapped(width)) lines.push_back(std::move(piece));
      height = std::max(height, lines.size());
      cells.push_back(std::move(lines));
    }
    for (std::size_t y = 0; y < height; ++y) {
      Line line;
      for (std::size_t i = 0; i < cells.size(); ++i) {
        line.pad_to(at_column(i) - margin);
        if (y < cells[i].size()) line.append(cells[i][y]);
      }
      page_.line(line, margin);
    }
    write_below(row);
  }

  // What must be read comes before what is ticked.
  void write_below(const FormRow& row) {
    const int indent = std::min(beside_.size() > 1 ? at_column(1) : margin + gap, margin + 4);
    std::string said;  // a label is not said twice in a row
    for (const auto& remark : row.under) {
      write_remark({remark.label == said ? "" : remark.label, remark.text}, indent);
      said = remark.label;
    }
    for (std::size_t i = 0; i < table_.columns.size(); ++i)
      if (table_.columns[i].below && !row.cells[i].empty())
        write_remark({table_.columns[i].heading, row.cells[i]}, indent);
  }

  void write_remark(const Remark& remark, int indent) {
    std::string label = remark.label;
    for (const auto& line : lines_of(remark.text)) {
      page_.rows({{Line(label, Tone::quiet).pad_to(remark_label - gap), line}}, indent);
      label.clear();
    }
  }

  int at_column(std::size_t column) const {
    int at = margin;
    for (std::size_t i = 0; i < column; ++i) at += widths_[i] + gap;
    return at;
  }

  Page& page_;
  const FormTable& table_;
  std::vector<std::size_t> beside_;
  std::vector<int> widths_;
};

void write(Page& page, const Passage& passage) {
  for (const auto& line : lines_of(passage)) page.line(line, margin);
}

// What begins with a box hangs beside it.
void write(Page& page, const Listing& listing) {
  for (const auto& item : listing.items) {
    const auto& pieces = item.pieces();
    const bool has_box = !pieces.empty() && std::holds_alternative<Tick>(pieces.front());
    Passage words;
    for (std::size_t i = has_box ? 1 : 0; i < pieces.size(); ++i) words.add(pieces[i]);
    Line box(has_box ? "" : "·");
    if (has_box) add(box, std::get<Tick>(pieces.front()));
    for (const auto& line : lines_of(words)) {
      page.rows({{box, line}}, margin);
      box = Line().pad_to(box.width());
    }
  }
}

void write(Page& page, const FormTable& table) { TableWriter(page, table).write(); }

void write_all(Page& page, const std::vector<Remark>& remarks) {
  std::string said;  // a label is not said twice in a row
  for (const auto& remark : remarks) {
    for (const auto& line : lines_of(remark.text)) {
      page.labelled(remark.label == said ? "" : remark.label, line);
      said = remark.label;
    }
  }
}

void write(Page& page, const Remarks& remarks) { write_all(page, remarks.all); }

}  // namespace

void write_text(Page& page, const Document& document) {
  page.line(Line(document.title, Tone::figure), margin);
  for (const auto& passage : document.under_title) write(page, passage);
  for (const auto& section : document.sections) {
    page.blank();
    page.line(Line(section.heading, Tone::act), margin);
    for (const auto& block : section.blocks) std::visit([&](const auto& each) { write(page, each); }, block);
  }
  page.blank();
  write_all(page, document.foot);
}

}  // namespace sheaf
