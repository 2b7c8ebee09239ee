// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "query/answer/picture.h"
#include "query/answer/picture_parts.h"
#include "query/quantity/unit.h"
#include "query/trade/torque_wrench.h"

namespace sheaf {
namespace {

constexpr double width = 720, left = 150, right = 680, bar_height = 22, row = 56, top = 80;

Band scale_of(const Figure& wrench) {
  const BaseBand base = base_band(wrench);
  return {base.least, base.most};
}

void draw_bar(SvgDrawing& drawing, const Axis& axis, const TorqueBar& bar, double y) {
  const double from = axis.at(bar.torque_nm.least), to = std::max(axis.at(bar.torque_nm.most), from + 2);
  drawing.text({left - 16, y + bar_height - 5}, bar.name, Anchor::end);
  drawing.rectangle({from, y}, to - from, bar_height);
  hatch(drawing, {from, y}, to - from, bar_height);
  drawing.text({from - 6, y + bar_height - 5}, picture_number(bar.torque_nm.least, 2), Anchor::end);
  drawing.text({to + 6, y + bar_height - 5}, picture_number(bar.torque_nm.most, 2));
}

// The scale from its least to its most as a ruler; what is below a fifth of the most is marked.
void draw_scale(SvgDrawing& drawing, const Axis& axis, const Band& scale, const Marks& marks, double y) {
  drawing.line({axis.at(scale.least), y}, {axis.at(scale.most), y}, 3);
  for (const double mark : marks.at) {
    const bool on_scale = scale.holds(mark);
    drawing.line({axis.at(mark), y}, {axis.at(mark), y + (on_scale ? 12.0 : 6.0)}, on_scale ? 2 : 1);
    drawing.text({axis.at(mark), y + 32}, picture_number(mark), Anchor::middle);
  }
  drawing.text({right, y + 56}, "N·m", Anchor::end);
}

void draw_wrench(SvgDrawing& drawing, const Axis& axis, const Band& scale, double y) {
  const double from = y - 14;
  drawing.text({left - 16, y + 5}, "wrench", Anchor::end);
  for (const double end : {scale.least, scale.most}) drawing.line({axis.at(end), from}, {axis.at(end), y}, 3);
  const double fifth = scale.most * dependable_share;
  if (fifth <= scale.least) return;
  drawing.line({axis.at(fifth), from}, {axis.at(fifth), y}, 1, true);
  drawing.text({axis.at(fifth) + 6, y - 6}, "dependable from here");
}

}  // namespace

std::string torque_picture(const std::string& thread, const std::vector<TorqueBar>& bars,
                           const std::optional<Figure>& wrench_scale) {
  double most = 0;
  for (const auto& bar : bars) most = std::max(most, bar.torque_nm.most);
  const std::optional<Band> wrench = wrench_scale ? std::optional(scale_of(*wrench_scale)) : std::nullopt;
  const Marks marks = marks_for({0, std::max(most * 1.1, wrench ? wrench->most : 0.0)}, 8);
  const Axis axis{{0, marks.at.back()}, left, right};
  const double scale_y = top + row * static_cast<double>(bars.size()) + 14;
  SvgDrawing drawing(width, scale_y + 70, "Computed torque for " + thread);
  drawing.text({24, 34}, "Computed torque for " + thread, Anchor::start, true);
  for (std::size_t i = 0; i < bars.size(); ++i)
    draw_bar(drawing, axis, bars[i], top + row * static_cast<double>(i));
  if (wrench) draw_wrench(drawing, axis, *wrench, scale_y);
  drawing.line({left, scale_y}, {right, scale_y}, 1);
  draw_scale(drawing, axis, wrench.value_or(axis.values), marks, scale_y);
  drawing.text({24, scale_y + 56}, "A computed torque never replaces the maker's.");
  return drawing.finish();
}

}  // namespace sheaf
