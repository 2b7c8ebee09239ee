// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "query/answer/picture.h"
#include "query/answer/picture_parts.h"

namespace sheaf {
namespace {

constexpr double width = 560, height = 640, top = 100, bottom = 540;
constexpr double left = 200, right = 330, wall = 14;

void draw_tube(SvgDrawing& drawing) {
  for (const double x : {left - wall, right}) {
    drawing.rectangle({x, top}, wall, bottom - top + wall);
    hatch(drawing, {x, top}, wall, bottom - top + wall);
  }
  drawing.rectangle({left, bottom}, right - left, wall);
  hatch(drawing, {left, bottom}, right - left, wall);
}

void draw_oil(SvgDrawing& drawing, double surface) {
  constexpr double apart = 12;
  drawing.line({left, surface}, {right, surface}, 3);
  for (double y = surface + apart; y < bottom; y += apart)
    drawing.line({left + 6, y}, {right - 6, y}, 0.8, true);
}

void draw_rod(SvgDrawing& drawing, const LegPicture& leg, double lower_end) {
  const double half = std::min(leg.rod_mm / leg.bore_mm, 0.9) * (right - left) / 2;
  const double middle = (left + right) / 2;
  drawing.rectangle({middle - half, top - 30}, half * 2, lower_end - top + 30);
  drawing.text({middle, top - 36}, "rod " + picture_number(leg.rod_mm) + " mm", Anchor::middle);
}

}  // namespace

std::string leg_picture(const LegPicture& leg) {
  SvgDrawing drawing(width, height, "A fork leg cut open, with the level of its oil");
  drawing.text({24, 34}, "Oil level in the leg", Anchor::start, true);
  const Axis depth{{0, leg.length_mm}, top, bottom};
  const double surface = depth.at(std::clamp(leg.level_mm, 0.0, leg.length_mm));
  draw_tube(drawing);
  draw_oil(drawing, surface);
  if (leg.rod_mm > 0) draw_rod(drawing, leg, depth.at(std::min(leg.level_mm + leg.dipped_mm, leg.length_mm)));
  const double beside = right + wall + 30;
  drawing.line({right + wall, top}, {beside + 8, top}, 0.6);
  drawing.line({right + wall, surface}, {beside + 8, surface}, 0.6);
  drawing.text({left - wall - 10, top + 5}, "rim", Anchor::end);
  upright_dimension(drawing, beside, top, surface, "level " + picture_number(leg.level_mm) + " mm");
  drawing.text({beside + 10, (surface + bottom) / 2 + 5}, "oil " + leg.volume);
  upright_dimension(drawing, 60, top, bottom, picture_number(leg.length_mm) + " mm");
  drawing.dimension({left, bottom + wall + 44}, {right, bottom + wall + 44},
                    "bore " + picture_number(leg.bore_mm) + " mm");
  drawing.text({24, height - 16}, "Heights to scale, widths not. A smaller level is MORE oil.");
  return drawing.finish();
}

}  // namespace sheaf
