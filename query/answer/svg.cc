// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/svg.h"

#include <array>
#include <charconv>
#include <cmath>
#include <numbers>

#include "query/answer/text.h"

namespace sheaf {
namespace {

std::string attribute(std::string_view name, double value) {
  return " " + std::string(name) + "=\"" + attribute_number(value) + "\"";
}

std::string_view name_of(Anchor anchor) {
  return anchor == Anchor::start ? "start" : anchor == Anchor::middle ? "middle" : "end";
}

SvgDrawing::Point on_circle(SvgDrawing::Point centre, double radius, double degrees) {
  const double angle = degrees * std::numbers::pi / 180;
  return {centre.x + radius * std::cos(angle), centre.y - radius * std::sin(angle)};
}

}  // namespace

std::string escaped_markup(std::string_view text) {
  std::string result;
  for (const char sign : clean(text)) {
    switch (sign) {
      case '&':
        result += "&amp;";
        break;
      case '<':
        result += "&lt;";
        break;
      case '>':
        result += "&gt;";
        break;
      case '"':
        result += "&quot;";
        break;
      case '\'':
        result += "&#39;";
        break;
      default:
        result += sign;
    }
  }
  return result;
}

std::string attribute_number(double value) {
  std::array<char, 64> buffer{};
  const double hundredths = std::round(value * 100) / 100;
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), hundredths + 0.0);
  return {buffer.data(), end.ptr};
}

SvgDrawing::SvgDrawing(double width, double height, std::string_view title) {
  const std::string w = attribute_number(width), h = attribute_number(height);
  text_ = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + w + "\" height=\"" + h +
          "\" viewBox=\"0 0 " + w + " " + h +
          "\" role=\"img\" fill=\"none\" stroke=\"#000\" font-family=\"sans-serif\" font-size=\"16\">\n" +
          "<title>" + escaped_markup(title) +
          "</title>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\" stroke=\"none\"/>\n";
}

void SvgDrawing::line(Point from, Point to, double thickness, bool dashed) {
  text_ += "<line" + attribute("x1", from.x) + attribute("y1", from.y) + attribute("x2", to.x) +
           attribute("y2", to.y) + attribute("stroke-width", thickness) +
           (dashed ? " stroke-dasharray=\"6 5\"" : " stroke-linecap=\"round\"") + "/>\n";
}

void SvgDrawing::rectangle(Point corner, double width, double height) {
  text_ += "<rect" + attribute("x", corner.x) + attribute("y", corner.y) + attribute("width", width) +
           attribute("height", height) + " stroke-width=\"2\" fill=\"#fff\"/>\n";
}

void SvgDrawing::circle(Point centre, double radius, bool filled) {
  text_ += "<circle" + attribute("cx", centre.x) + attribute("cy", centre.y) + attribute("r", radius) +
           " stroke-width=\"2\" fill=\"" + (filled ? "#000" : "#fff") + "\"/>\n";
}

void SvgDrawing::ellipse(Point centre, double across, double up, bool dashed) {
  text_ += "<ellipse" + attribute("cx", centre.x) + attribute("cy", centre.y) + attribute("rx", across) +
           attribute("ry", up) +
           (dashed ? " stroke-width=\"1\" stroke-dasharray=\"6 5\"" : " stroke-width=\"2\" fill=\"#fff\"") +
           "/>\n";
}

void SvgDrawing::arc(Point centre, double radius, double from, double to) {
  const Point begin = on_circle(centre, radius, from), end = on_circle(centre, radius, to);
  const std::string r = attribute_number(radius);
  text_ += "<path d=\"M" + attribute_number(begin.x) + " " + attribute_number(begin.y) + " A" + r + " " + r +
           " 0 " + (std::abs(to - from) > 180 ? "1" : "0") + " " + (to > from ? "0" : "1") + " " +
           attribute_number(end.x) + " " + attribute_number(end.y) + "\" stroke-width=\"1\"/>\n";
}

void SvgDrawing::text(Point at, std::string_view words, Anchor anchor, bool bold) {
  text_ += "<text" + attribute("x", at.x) + attribute("y", at.y) + " text-anchor=\"" +
           std::string(name_of(anchor)) +
           "\" fill=\"#000\" stroke=\"#fff\" stroke-width=\"4\" paint-order=\"stroke\"" +
           (bold ? " font-weight=\"bold\"" : "") + ">" + escaped_markup(words) + "</text>\n";
}

double SvgDrawing::paragraph(Point at, std::string_view words, double width, bool bold) {
  constexpr double line_height = 22, letter = 9.2, bold_letter = 10.4;  // px, of the widest usual sans-serif
  for (const auto& line : wrap(words, static_cast<int>(width / (bold ? bold_letter : letter)))) {
    text(at, line, Anchor::start, bold);
    at.y += line_height;
  }
  return at.y;
}

void SvgDrawing::dimension(Point from, Point to, std::string_view words) {
  constexpr double mark = 6, above = 8;
  line(from, to, 1);
  for (const Point& end : {from, to}) line({end.x, end.y - mark}, {end.x, end.y + mark}, 1);
  text({(from.x + to.x) / 2, std::min(from.y, to.y) - above}, words, Anchor::middle);
}

std::string SvgDrawing::finish() { return text_ + "</svg>\n"; }

}  // namespace sheaf
