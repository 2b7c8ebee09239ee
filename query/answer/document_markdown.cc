// SPDX-License-Identifier: GPL-2.0-or-later
// Markdown as most readers take it: headings, lists with boxes, tables with bars. What a table cannot say
// across its columns stands in the cell that names the row.
#include "query/answer/document.h"
#include "query/answer/text.h"

namespace sheaf {
namespace {

// Signs that Markdown would take as its own; a bar would part a table's cells.
std::string escaped(std::string_view text) {
  std::string result;
  for (const char sign : clean(text)) {
    if (std::string_view("\\`*_{}[]<>#|~&").find(sign) != std::string_view::npos) result += '\\';
    result += sign;
  }
  return result;
}

std::string emphasised(const Run& run) {
  const std::string text = escaped(run.text);
  const bool is_bold = run.tone == Tone::figure || run.tone == Tone::act || run.tone == Tone::caution;
  if (!is_bold || text.find_first_not_of(' ') == std::string::npos) return text;
  const auto first = text.find_first_not_of(' '), last = text.find_last_not_of(' ');
  return text.substr(0, first) + "**" + text.substr(first, last - first + 1) + "**" + text.substr(last + 1);
}

std::string text_of(const Run& run) { return emphasised(run); }

std::string text_of(const Tick& tick) {
  return (tick.ticked ? "☑" : "☐") + (tick.label.empty() ? "" : "\u00A0" + escaped(tick.label)) + " ";
}

std::string text_of(const Blank& blank) {
  std::string text = blank.label.empty() ? "" : escaped(blank.label) + "\u00A0";
  text += blank.filled.empty() ? "\\_\\_\\_\\_\\_\\_" : "**" + escaped(blank.filled) + "**";
  return text + (blank.unit.empty() ? "" : "\u00A0" + escaped(blank.unit)) + " ";
}

std::string text_of(const Break&) { return "<br>"; }

std::string text_of(const Passage& passage) {
  std::string text;
  for (const auto& piece : passage.pieces())
    text += std::visit([](const auto& each) { return text_of(each); }, piece);
  while (text.ends_with(' ')) text.pop_back();
  return text;
}

std::string text_of(const Remark& remark) {
  return "*" + escaped(remark.label) + ":* " + text_of(remark.text);
}

std::string bars(const std::vector<std::string>& cells) {
  std::string line = "|";
  for (const auto& cell : cells) line += " " + (cell.empty() ? std::string(" ") : cell) + " |";
  return line + "\n";
}

std::string block_of(const Passage& passage) { return text_of(passage) + "\n\n"; }

std::string block_of(const Listing& listing) {
  std::string text;
  for (const auto& item : listing.items) text += "- " + text_of(item) + "\n";
  return text + "\n";
}

std::string block_of(const Remarks& remarks) {
  std::string text;
  for (const auto& remark : remarks.all) text += "- " + text_of(remark) + "\n";
  return text + "\n";
}

std::string block_of(const FormTable& table) {
  std::string text = table.over.empty() ? "" : block_of(Remarks{table.over});
  std::vector<std::string> headings, rules;
  for (const auto& column : table.columns) {
    headings.push_back(escaped(column.heading));
    rules.emplace_back("---");
  }
  text += bars(headings) + bars(rules);
  for (const auto& row : table.rows) {
    std::vector<std::string> cells;
    for (const auto& cell : row.cells) cells.push_back(text_of(cell));
    if (!row.group.empty()) cells[table.heads] = "*" + escaped(row.group) + "*<br>" + cells[table.heads];
    for (const auto& remark : row.under) cells[table.heads] += "<br>" + text_of(remark);
    text += bars(cells);
  }
  return text + "\n";
}

}  // namespace

std::string markdown_of(const Document& document) {
  std::string text = "# " + escaped(document.title) + "\n\n";
  for (const auto& passage : document.under_title) text += block_of(passage);
  for (const auto& section : document.sections) {
    text += "## " + escaped(section.heading) + "\n\n";
    for (const auto& block : section.blocks)
      text += std::visit([](const auto& each) { return block_of(each); }, block);
  }
  text += "---\n\n" + block_of(Remarks{document.foot});
  text.pop_back();
  return text;
}

}  // namespace sheaf
