// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "query/answer/picture.h"
#include "query/answer/picture_parts.h"

namespace sheaf {
namespace {

constexpr double width = 700, face = 130, left = 60, right = 520, solid = 56, gap = 6;

// The part with the groove, cut away to both sides of it, and the face that closes it.
void draw_solids(SvgDrawing& drawing, double groove_left, double groove_right, double floor) {
  const auto block = [&](double from, double to, double upper, double lower) {
    drawing.rectangle({from, upper}, to - from, lower - upper);
    hatch(drawing, {from, upper}, to - from, lower - upper);
  };
  block(left, right, face - solid, face);
  block(left, groove_left, face + gap, floor + solid);
  block(groove_right, right, face + gap, floor + solid);
  block(groove_left, groove_right, floor, floor + solid);
}

}  // namespace

std::string gland_picture(const ORing& ring, const Gland& gland, const GlandVerdict& verdict) {
  const double scale = std::min(260 / gland.width, 200 / gland.depth);
  const double middle = (left + right) / 2, half = gland.width * scale / 2;
  const double floor = face + gland.depth * scale;
  SvgDrawing drawing(width, floor + solid + 112, "An O-ring in its groove, cut through");
  drawing.text(
      {24, 34},
      "O-ring " + picture_number(ring.inside, 4) + " × " + picture_number(ring.section) + " mm in its groove",
      Anchor::start, true);
  draw_solids(drawing, middle - half, middle + half, floor);
  // Squeezed it keeps its area, as rubber does; between groove and face it is as high as the groove is deep.
  const double squeezed = std::min(verdict.section * verdict.section / gland.depth, gland.width) * scale / 2;
  drawing.ellipse({middle, (face + floor) / 2}, squeezed, (floor - face) / 2);
  const double free = ring.section * scale / 2;
  drawing.ellipse({middle, floor - free}, free, free, true);
  drawing.dimension({middle - half, floor + solid + 40}, {middle + half, floor + solid + 40},
                    "width " + picture_number(gland.width) + " mm");
  upright_dimension(drawing, right + 24, face, floor, "depth " + picture_number(gland.depth) + " mm");
  drawing.text({24, floor + solid + 76}, "squeeze " + picture_number(verdict.squeeze * 100, 2) + " %, fill " +
                                             picture_number(verdict.fill * 100, 2) + " %");
  drawing.text({24, floor + solid + 98}, "Broken line: the ring before it is squeezed.");
  return drawing.finish();
}

}  // namespace sheaf
