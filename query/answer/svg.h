// SPDX-License-Identifier: GPL-2.0-or-later
// Plain drawings as SVG 1.1: black lines, text in the reader's own sans-serif, readable without colour.
#pragma once

#include <string>
#include <string_view>

namespace sheaf {

enum class Anchor { start, middle, end };

// Coordinates in px, y downward. Texts are escaped here.
class SvgDrawing {
 public:
  // The title is what a reader of screens is told instead of the drawing.
  SvgDrawing(double width, double height, std::string_view title);

  struct Point {
    double x = 0, y = 0;
  };
  void line(Point from, Point to, double thickness, bool dashed = false);
  void rectangle(Point corner, double width, double height);
  void circle(Point centre, double radius, bool filled);
  void ellipse(Point centre, double across, double up,
               bool dashed = false);  // half its axes; not filled if dashed
  // Part of a circle from one angle to another, in degrees counterclockwise from the right.
  void arc(Point centre, double radius, double from, double to);
  // Stands out from the lines that it crosses.
  void text(Point at, std::string_view words, Anchor anchor = Anchor::start, bool bold = false);
  // Words in lines of at most that width, each below the last. Returns the height of the next line.
  double paragraph(Point at, std::string_view words, double width, bool bold = false);
  // A line with an end mark on both sides and words in its middle.
  void dimension(Point from, Point to, std::string_view words);

  std::string finish();

 private:
  std::string text_;
};

// &, <, > and quotes as references; control characters left out. For SVG and HTML.
std::string escaped_markup(std::string_view text);

// A number for an attribute: at most two decimals, a point whatever the locale.
std::string attribute_number(double value);

}  // namespace sheaf
