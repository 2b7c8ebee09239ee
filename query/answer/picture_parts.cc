// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/picture_parts.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "query/trade/reckoned.h"

namespace sheaf {

Marks marks_for(Band band, int about) {
  const double rough = (band.most - band.least) / about;
  const double power = std::pow(10, std::floor(std::log10(rough)));
  double step = power * 10;
  for (const double part : {5.0, 2.0, 1.0})
    if (power * part >= rough) step = power * part;
  Marks marks{step, {}};
  const double first = std::floor(band.least / step + 1e-9), last = std::ceil(band.most / step - 1e-9);
  for (double at = first; at <= last; ++at) marks.at.push_back(at * step);
  return marks;
}

std::vector<double> logarithmic_marks(Band band) {
  std::vector<double> marks;
  for (double power = std::pow(10, std::floor(std::log10(band.least))); power <= band.most; power *= 10)
    for (const double part : {1.0, 2.0, 5.0})
      if (band.holds(power * part)) marks.push_back(power * part);
  return marks;
}

void upright_dimension(SvgDrawing& drawing, double x, double top, double bottom, std::string_view words) {
  constexpr double mark = 6, beside = 10, half_a_letter = 5;
  drawing.line({x, top}, {x, bottom}, 1);
  for (const double y : {top, bottom}) drawing.line({x - mark, y}, {x + mark, y}, 1);
  drawing.text({x + beside, (top + bottom) / 2 + half_a_letter}, words);
}

void hatch(SvgDrawing& drawing, SvgDrawing::Point corner, double width, double height) {
  constexpr double apart = 7;
  for (double start = apart; start < width + height; start += apart) {
    const double left = std::max(0.0, start - height), right = std::min(width, start);
    drawing.line({corner.x + left, corner.y + start - left}, {corner.x + right, corner.y + start - right},
                 0.6);
  }
}

std::string picture_number(double value, int digits) {
  const auto number = reckoned_number(value, digits);
  if (!number) return "?";
  std::string text = shown(*number);
  if (text.find('.') != std::string::npos) {
    while (text.ends_with('0')) text.pop_back();
    if (text.ends_with('.')) text.pop_back();
  }
  return text;
}

}  // namespace sheaf
