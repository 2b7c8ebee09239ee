// SPDX-License-Identifier: GPL-2.0-or-later
// A page of text being written: figures beside what they are of, labelled lines, wrapped to the width.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sheaf {

struct TextStyle {
  int width = 80;
  bool colour = false;  // colour only repeats what the words say
  bool ascii = false;   // the terminal cannot show UTF-8
};

enum class Tone { plain, figure, derived, act, caution, quiet };

// A line that is built of parts of different tones.
class Line {
 public:
  Line() = default;
  Line(std::string_view text, Tone tone = Tone::plain) { add(text, tone); }
  Line& add(std::string_view text, Tone tone = Tone::plain);
  Line& append(const Line& more);
  Line& pad_to(int width);
  int width() const;
  bool empty() const { return parts_.empty(); }

  // In lines of at most `width` columns; tones are kept.
  std::vector<Line> wrapped(int width) const;

 private:
  friend class Page;
  struct Part {
    std::string text;
    Tone tone;
  };
  std::vector<Part> parts_;
};

class Page {
 public:
  explicit Page(TextStyle style) : style_(style) {}

  void line(const Line& line, int indent = 0);  // wrapped, hanging below its indent
  void blank();                                 // never two in a row, never the first

  // "  source   Sorvane fork service leaflet 41": the label once, the text hanging beside it.
  void labelled(std::string_view label, const Line& text);

  // Two columns from the top; below each other where the page is too narrow for both.
  void beside(const std::vector<Line>& left, const std::vector<Line>& right);

  // Rows of one cell or more whose columns line up; the last one wraps. On a narrow page the cells of a
  // row follow each other.
  void rows(const std::vector<std::vector<Line>>& rows, int indent);

  const TextStyle& style() const { return style_; }
  std::string take() { return std::move(text_); }

 private:
  void put(const Line& line, int indent);
  void hang(const Line& head, const Line& body, int indent, int at);
  int room(int indent) const;

  TextStyle style_;
  std::string text_;
};

}  // namespace sheaf
