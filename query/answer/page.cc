// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/page.h"

#include <algorithm>
#include <utility>

#include "query/answer/text.h"

namespace sheaf {
namespace {

constexpr int margin = 2;         // before every line of an answer
constexpr int label_width = 9;    // "caution", "address" and what parts them from their text
constexpr int gap = 2;            // between columns
constexpr int least_column = 24;  // below this a column beside another is not worth having

// Weight for what must be seen first, one colour for what is derived, one for cautions; none carries a
// meaning that the words do not.
std::string_view opening(Tone tone) {
  switch (tone) {
    case Tone::figure:
      return "\033[1m";
    case Tone::act:
      return "\033[1m";
    case Tone::caution:
      return "\033[1;33m";
    case Tone::derived:
      return "\033[36m";
    case Tone::quiet:
      return "\033[2m";
    case Tone::plain:
      return "";
  }
  return "";
}

int widest(const std::vector<Line>& lines) {
  int width = 0;
  for (const auto& line : lines) width = std::max(width, line.width());
  return width;
}

}  // namespace

Line& Line::add(std::string_view text, Tone tone) {
  if (!text.empty()) parts_.push_back({clean(text), tone});
  return *this;
}

Line& Line::append(const Line& more) {
  parts_.insert(parts_.end(), more.parts_.begin(), more.parts_.end());
  return *this;
}

Line& Line::pad_to(int width) {
  const int missing = width - this->width();
  if (missing > 0) parts_.push_back({std::string(static_cast<std::size_t>(missing), ' '), Tone::plain});
  return *this;
}

int Line::width() const {
  int width = 0;
  for (const auto& part : parts_) width += display_width(part.text);
  return width;
}

// Wraps the text of all parts as one, then gives each piece back the tone of the part it came from.
std::vector<Line> Line::wrapped(int width) const {
  std::string whole;
  for (const auto& part : parts_) whole += part.text;
  std::vector<Line> lines;
  std::size_t part = 0, within = 0;
  const auto skip_spaces = [&] {
    while (part < parts_.size()) {
      const std::string& text = parts_[part].text;
      while (within < text.size() && text[within] == ' ') ++within;
      if (within < text.size()) return;
      ++part;
      within = 0;
    }
  };
  for (const auto& text : wrap(whole, width)) {
    if (!lines.empty()) skip_spaces();
    Line line;
    for (std::size_t left = text.size(); left > 0 && part < parts_.size();) {
      const auto& from = parts_[part];
      const std::size_t taken = std::min(left, from.text.size() - within);
      if (taken > 0) line.parts_.push_back({from.text.substr(within, taken), from.tone});
      left -= taken;
      within += taken;
      if (within == from.text.size()) ++part, within = 0;
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

int Page::room(int indent) const { return std::max(style_.width - indent, 6); }

void Page::put(const Line& line, int indent) {
  text_.append(static_cast<std::size_t>(indent), ' ');
  for (const auto& part : line.parts_) {
    const auto open = style_.colour ? opening(part.tone) : std::string_view();
    text_ += open;
    text_ += style_.ascii ? plain_ascii(part.text) : part.text;
    if (!open.empty()) text_ += "\033[0m";
  }
  while (text_.ends_with(' ')) text_.pop_back();
  text_ += '\n';
}

void Page::line(const Line& line, int indent) {
  for (const auto& piece : line.wrapped(room(indent))) put(piece, indent);
}

void Page::blank() {
  if (!text_.empty() && !text_.ends_with("\n\n")) text_ += '\n';
}

// The head once, the body wrapped beside it from column `at` on.
void Page::hang(const Line& head, const Line& body, int indent, int at) {
  Line line = head;
  for (const auto& piece : body.wrapped(room(at))) {
    line.pad_to(at - indent);
    put(line.append(piece), indent);
    line = Line();
  }
}

void Page::labelled(std::string_view label, const Line& text) {
  const int at = margin + std::max(label_width, display_width(label) + gap);
  hang(Line(label, Tone::quiet), text, margin, at);
}

void Page::beside(const std::vector<Line>& left, const std::vector<Line>& right) {
  const int left_width = widest(left) + gap;
  const int right_width = style_.width - margin - left_width;
  if (right_width < least_column) {
    for (const auto& each : left) line(each, margin);
    for (const auto& each : right) line(each, margin);
    return;
  }
  std::vector<Line> wrapped;
  for (const auto& each : right)
    for (auto& piece : each.wrapped(right_width)) wrapped.push_back(std::move(piece));
  for (std::size_t i = 0; i < std::max(left.size(), wrapped.size()); ++i) {
    Line both = i < left.size() ? left[i] : Line();
    if (i < wrapped.size()) {
      both.pad_to(left_width);
      both.append(wrapped[i]);
    }
    put(both, margin);
  }
}

void Page::rows(const std::vector<std::vector<Line>>& rows, int indent) {
  std::vector<int> widths;
  for (const auto& row : rows) {
    widths.resize(std::max(widths.size(), row.size()));
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], row[i].width());
  }
  int last_at = indent;
  for (std::size_t i = 0; i + 1 < widths.size(); ++i) last_at += widths[i] + gap;
  const bool aligned = style_.width - last_at >= least_column;
  for (const auto& row : rows) {
    Line head;
    for (std::size_t i = 0; i + 1 < row.size(); ++i) {
      const int cell_end = head.width() + (aligned ? widths[i] : row[i].width()) + gap;
      head.append(row[i]).pad_to(cell_end);
    }
    if (aligned)
      hang(head, row.back(), indent, last_at);
    else
      line(head.append(row.back()), indent);
  }
}

}  // namespace sheaf
