// SPDX-License-Identifier: GPL-2.0-or-later
// Two spaces a level; what the writer put in [ ] or { } stays so while it fits on a line.
#include <algorithm>

#include "compiler/sheet/layout_builder.h"
#include "query/library/utf8.h"

namespace sheafc {
namespace {

using Kind = LayoutValue::Kind;
constexpr std::size_t width = 120;
constexpr std::size_t folded_width = 118;

std::string flow_text(const LayoutValue& value) {
  if (value.kind == Kind::scalar) return value.text;
  const bool map = value.kind == Kind::mapping;
  std::string text;
  for (const LayoutItem& item : value.items) {
    text += (text.empty() ? "" : ", ") + (map ? item.key + ": " : "") + flow_text(item.value);
  }
  return map ? "{ " + text + " }" : "[" + text + "]";
}

class Writer {
 public:
  std::string write(const LayoutValue& root, const Edges& edges) {
    remarks(edges.head, 0);
    items(root, 0);
    remarks(edges.tail, 0);
    return std::move(text_);
  }

 private:
  void line(std::size_t indent, const std::string& text) {
    if (!text.empty()) text_ += std::string(indent, ' ') + text;
    text_ += '\n';
  }

  void remarks(const std::vector<std::string_view>& remarks, std::size_t indent) {
    for (const std::string_view remark : remarks) line(indent, std::string(remark));
  }

  static std::string beside(const LayoutItem& item) {
    return item.beside.empty() ? "" : "  " + std::string(item.beside);
  }

  void items(const LayoutValue& value, std::size_t indent) {
    const std::vector<std::size_t> widths = value.aligned ? cell_widths(value) : std::vector<std::size_t>{};
    for (const LayoutItem& item : value.items) {
      if (item.blank_before) text_ += '\n';
      remarks(item.before, indent);
      if (value.kind == Kind::mapping)
        pair(item, indent, std::string(indent, ' '));
      else if (value.aligned && item.value.flow)
        line(indent, "- " + row(item.value, widths) + beside(item));
      else
        element(item, indent);
      remarks(item.after, indent);
    }
  }

  // `lead` is what stands before the key on its line: spaces, or a dash of the sequence around it.
  void pair(const LayoutItem& item, std::size_t indent, const std::string& lead) {
    const std::string start = lead + item.key + ":";
    if (item.value.kind == Kind::scalar) return scalar(item, indent + 2, start + " ");
    if (fits(item.value, count(start) + 1))
      return line(0, start + " " + flow_text(item.value) + beside(item));
    line(0, start + beside(item));
    items(item.value, indent + 2);
  }

  void element(const LayoutItem& item, std::size_t indent) {
    const std::string dash = std::string(indent, ' ') + "- ";
    if (item.value.kind == Kind::scalar) return scalar(item, indent + 2, dash);
    if (fits(item.value, indent + 2)) return line(0, dash + flow_text(item.value) + beside(item));
    if (!item.beside.empty()) line(indent, std::string(item.beside));
    if (item.value.kind == Kind::sequence) {  // a list in a list
      line(0, std::string(indent, ' ') + "-");
      return items(item.value, indent + 2);
    }
    opened_mapping(item.value, indent, dash);
  }

  void opened_mapping(const LayoutValue& value, std::size_t indent, const std::string& dash) {
    const LayoutItem& first = value.items.front();
    remarks(first.before, indent + 2);
    pair(first, indent + 2, dash);
    remarks(first.after, indent + 2);
    LayoutValue rest = value;
    rest.items.erase(rest.items.begin());
    items(rest, indent + 2);
  }

  void scalar(const LayoutItem& item, std::size_t indent, const std::string& start) {
    const std::string& text = item.value.text;
    if (!item.value.folded || count(start) + count(text) <= width)
      return line(0, start + text + beside(item));
    line(0, start + ">-" + beside(item));
    fold(unquoted(text), indent);
  }

  // Words, as many to a line as fit; a folded block has no quotes and no escapes.
  void fold(std::string_view text, std::size_t indent) {
    std::string row;
    while (!text.empty()) {
      const std::size_t end = std::min(text.find(' '), text.size());
      const std::string_view word = text.substr(0, end);
      if (!row.empty() && count(row) + 1 + count(word) > folded_width - indent) {
        line(indent, row);
        row.clear();
      }
      row += (row.empty() ? "" : " ") + std::string(word);
      text.remove_prefix(std::min(end + 1, text.size()));
    }
    line(indent, row);
  }

  static std::string unquoted(const std::string& text) {
    if (text.front() != '"') return text;
    std::string plain;
    for (std::size_t i = 1; i + 1 < text.size(); ++i) {
      if (text[i] == '\\') ++i;
      plain += text[i];
    }
    return plain;
  }

  static std::size_t count(std::string_view text) {
    return static_cast<std::size_t>(sheaf::count_characters(text));
  }

  static bool fits(const LayoutValue& value, std::size_t column) {
    return value.items.empty() || (value.flow && column + count(flow_text(value)) <= width);
  }

  static std::vector<std::size_t> cell_widths(const LayoutValue& rows) {
    std::vector<std::size_t> widths;
    for (const LayoutItem& row : rows.items) {
      const auto& cells = row.value.items;
      widths.resize(std::max(widths.size(), cells.size()));
      for (std::size_t i = 0; i < cells.size(); ++i)
        widths[i] = std::max(widths[i], count(cells[i].value.text));
    }
    return widths;
  }

  static std::string row(const LayoutValue& cells, const std::vector<std::size_t>& widths) {
    std::string text = "[";
    for (std::size_t i = 0; i < cells.items.size(); ++i) {
      const std::string& cell = cells.items[i].value.text;
      text += cell;
      if (i + 1 < cells.items.size()) text += "," + std::string(widths[i] - count(cell) + 1, ' ');
    }
    return text + "]";
  }

  std::string text_;
};

}  // namespace

std::string write_layout(const LayoutValue& root, const Edges& edges) { return Writer().write(root, edges); }

}  // namespace sheafc
