// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <cmath>

#include "query/answer/picture.h"
#include "query/answer/picture_parts.h"
#include "query/quantity/unit.h"
#include "query/trade/torque_wrench.h"

namespace sheaf {
namespace {

constexpr double width = 720, left = 150, right = 680, bar_height = 22, row = 56, top = 92;

double per_unit(const Unit& unit) {
  return static_cast<double>(unit.factor.numerator) / static_cast<double>(unit.factor.denominator);
}

Band in(const Unit& unit, Band nm) { return {nm.least / per_unit(unit), nm.most / per_unit(unit)}; }

Band scale_of(const Figure& wrench, const Unit& unit) {
  const BaseBand base = base_band(wrench);
  return in(unit, {base.least, base.most});
}

// An end that the band leaves open goes on to the end of the scale, without a number.
void draw_bar(SvgDrawing& drawing, const Axis& axis, const TorqueBar& bar, Band at, double y) {
  const double from = std::isfinite(at.least) ? axis.at(at.least) : left;
  const double to = std::isfinite(at.most) ? std::max(axis.at(at.most), from + 2) : right;
  drawing.text({left - 16, y + bar_height - 5}, bar.name, Anchor::end);
  drawing.rectangle({from, y}, to - from, bar_height);
  hatch(drawing, {from, y}, to - from, bar_height);
  drawing.text({from - 6, y + bar_height - 5}, bar.least, Anchor::end);
  drawing.text({to + 6, y + bar_height - 5}, bar.most);
}

// The scale from its least to its most as a ruler; what is below a fifth of the most is marked.
void draw_scale(SvgDrawing& drawing, const Axis& axis, const Band& scale, const Marks& marks,
                const Unit& unit, double y) {
  drawing.line({axis.at(scale.least), y}, {axis.at(scale.most), y}, 3);
  for (const double mark : marks.at) {
    const bool on_scale = scale.holds(mark);
    drawing.line({axis.at(mark), y}, {axis.at(mark), y + (on_scale ? 12.0 : 6.0)}, on_scale ? 2 : 1);
    drawing.text({axis.at(mark), y + 32}, picture_number(mark), Anchor::middle);
  }
  drawing.text({left - 16, y + 32}, unit.symbol, Anchor::end);
}

void draw_wrench(SvgDrawing& drawing, const Axis& axis, const Band& scale, double y) {
  const double from = y - 14;
  drawing.text({left - 16, y + 5}, "scale", Anchor::end);
  for (const double end : {scale.least, scale.most}) drawing.line({axis.at(end), from}, {axis.at(end), y}, 3);
  const double fifth = scale.most * dependable_share;
  if (fifth <= scale.least) return;
  drawing.line({axis.at(fifth), from}, {axis.at(fifth), y}, 1, true);
  drawing.text({axis.at(fifth) + 6, y - 20}, "dependable from here");
}

// A line through all the bars down to the mark of the scale.
void draw_setting(SvgDrawing& drawing, double x, const std::string& number, double scale_y) {
  drawing.line({x, top - 14}, {x, scale_y}, 2);
  drawing.text({x, top - 22}, "set " + number, Anchor::middle, true);
}

Band axis_band(const TorquePicture& torque, const std::optional<Band>& scale) {
  double most = scale ? scale->most : 0;
  for (const auto& bar : torque.bars)
    for (const double end : {bar.torque_nm.least, bar.torque_nm.most})
      if (std::isfinite(end)) most = std::max(most, end / per_unit(*torque.unit) * (scale ? 1 : 1.1));
  return {0, most};
}

}  // namespace

std::string torque_picture(const TorquePicture& torque) {
  const Unit& unit = *torque.unit;
  const auto scale = torque.wrench_scale ? std::optional(scale_of(*torque.wrench_scale, unit)) : std::nullopt;
  const Marks marks = marks_for(axis_band(torque, scale), 8);
  const Axis axis{{0, marks.at.back()}, left, right};
  const double scale_y = top + row * static_cast<double>(torque.bars.size()) + 24;
  constexpr double margin = 24, room = width - 2 * margin;
  const SvgDrawing::Point footer{margin, scale_y + 64};
  SvgDrawing drawing(width, SvgDrawing(0, 0, "").paragraph(footer, torque.footer, room), torque.title);
  drawing.text({margin, 34}, torque.title, Anchor::start, true);
  for (std::size_t i = 0; i < torque.bars.size(); ++i)
    draw_bar(drawing, axis, torque.bars[i], in(unit, torque.bars[i].torque_nm),
             top + row * static_cast<double>(i));
  if (torque.set) draw_setting(drawing, axis.at(approximate(torque.set->value)), shown(*torque.set), scale_y);
  if (scale) draw_wrench(drawing, axis, *scale, scale_y);
  drawing.line({left, scale_y}, {right, scale_y}, 1);
  draw_scale(drawing, axis, scale.value_or(axis.values), marks, unit, scale_y);
  drawing.paragraph(footer, torque.footer, room);
  return drawing.finish();
}

}  // namespace sheaf
