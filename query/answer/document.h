// SPDX-License-Identifier: GPL-2.0-or-later
// A page that a person prints and fills in: sections of words, lists and tables, with boxes to tick and
// blanks to write in. Built once, then written as text, Markdown or HTML (document_*.cc); how it looks in
// each is decided there, what it says is not.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "query/answer/page.h"

namespace sheaf {

struct Run {
  std::string text;
  Tone tone = Tone::plain;
};

// A box to tick. `about` names it where its label alone would not: "fork top plug, tightened, left".
struct Tick {
  std::string id, label, about;
  bool ticked = false;
};

// A line to write on. `width` is in signs.
struct Blank {
  static constexpr int whole_line = 60;
  std::string id, label, unit, about;
  std::string filled;
  int width = 8;
};

struct Break {};  // the next piece begins a new line

// Words with boxes and blanks among them.
class Passage {
 public:
  using Piece = std::variant<Run, Tick, Blank, Break>;

  Passage() = default;
  Passage(std::string_view text, Tone tone = Tone::plain) { add(text, tone); }
  Passage& add(std::string_view text, Tone tone = Tone::plain);
  Passage& add(Tick tick);
  Passage& add(Blank blank);
  Passage& add(Piece piece);
  Passage& append(const Passage& more);
  Passage& new_line();  // nothing, at the beginning

  bool empty() const { return pieces_.empty(); }
  const std::vector<Piece>& pieces() const { return pieces_; }

 private:
  std::vector<Piece> pieces_;
};

// "caution  Eye protection.": words behind the label that says what they are.
struct Remark {
  std::string label;
  Passage text;
};

// Where a page of text is too narrow for every column, those marked `below` stand under the others,
// behind their heading. Where there is room, the columns share it by their twelfths.
struct FormColumn {
  std::string heading;
  bool below = false;
  int twelfths = 1;  // 1 to 12
};

struct FormRow {
  std::string group = {};  // begins a group of rows so called; empty: the row belongs to the one before
  std::vector<Passage> cells;
  std::vector<Remark> under;  // belongs to this row alone, across all columns
};

struct FormTable {
  std::string name;  // for a reader who does not see it
  std::vector<FormColumn> columns;
  std::size_t heads = 0;     // the cell that names a row
  std::vector<Remark> over;  // belongs to every row; said again on every printed page
  std::vector<FormRow> rows;
};

struct Listing {
  std::vector<Passage> items;
  bool compact = false;  // short items, side by side where the page is wide
};

struct Remarks {
  std::vector<Remark> all;
};

using Block = std::variant<Passage, Listing, FormTable, Remarks>;

struct Section {
  std::string heading;
  std::vector<Block> blocks;
};

struct Document {
  std::string title;
  std::vector<Passage> under_title;
  std::string mark;  // at the foot of every printed page: what the page is of
  std::vector<Section> sections;
  std::vector<Remark> foot;
};

void write_text(Page& page, const Document& document);
std::string markdown_of(const Document& document);
// One whole file, with its style inside and nothing fetched; and what stands between its body's tags.
std::string html_of(const Document& document);
std::string html_body_of(const Document& document);

}  // namespace sheaf
