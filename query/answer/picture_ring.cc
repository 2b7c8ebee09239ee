// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "query/answer/picture.h"
#include "query/answer/picture_parts.h"

namespace sheaf {
namespace {

constexpr double width = 700, middle = 260, widest = 400, top = 110;
constexpr double words_need = 76;  // from one line of dimension to the next

// One cut face; `inner` is the side of the hole: −1 if the hole is on its left.
struct Face {
  double left = 0, right = 0, top = 0, bottom = 0;
  int inner = 1;
  double width() const { return right - left; }
  double height() const { return bottom - top; }
  // From the outside (0) to the hole (1), and from the top (0) to the bottom (1).
  SvgDrawing::Point at(double inward, double down) const {
    const double x = inner > 0 ? left + inward * width() : right - inward * width();
    return {x, top + down * height()};
  }
};

// A case outside, a web across, and two lips on the shaft, the lower one pressed by a spring.
void draw_lip_seal(SvgDrawing& drawing, const Face& face) {
  const std::vector<SvgDrawing::Point> outline = {
      face.at(0, 0),      face.at(0, 1),       face.at(0.25, 1),    face.at(0.25, 0.3),
      face.at(0.55, 0.3), face.at(0.62, 0.95), face.at(0.85, 0.95), face.at(1, 0.72),
      face.at(0.8, 0.3),  face.at(1, 0.05),    face.at(0.9, 0),     face.at(0, 0)};
  for (std::size_t i = 1; i < outline.size(); ++i) drawing.line(outline[i - 1], outline[i], 2);
  const auto spring = face.at(0.52, 0.75);
  drawing.circle(spring, std::max(std::min(face.width(), face.height()) * 0.09, 2.0), false);
}

void draw_bearing(SvgDrawing& drawing, const Face& face) {
  const double ring = face.width() * 0.28;
  for (const double x : {face.left, face.right - ring}) {
    drawing.rectangle({x, face.top}, ring, face.height());
    hatch(drawing, {x, face.top}, ring, face.height());
  }
  const double ball = std::min(face.width() * 0.26, face.height() * 0.35);
  drawing.circle({(face.left + face.right) / 2, (face.top + face.bottom) / 2}, ball, false);
}

void draw_face(SvgDrawing& drawing, RingShape shape, const Face& face) {
  switch (shape) {
    case RingShape::lip_seal:
      return draw_lip_seal(drawing, face);
    case RingShape::o_ring:
      return drawing.circle({(face.left + face.right) / 2, (face.top + face.bottom) / 2}, face.width() / 2,
                            false);
    case RingShape::bearing:
      return draw_bearing(drawing, face);
    case RingShape::bushing:
      drawing.rectangle({face.left, face.top}, face.width(), face.height());
      return hatch(drawing, {face.left, face.top}, face.width(), face.height());
  }
}

// Lines from the part down to its line of dimension.
void draw_dimension(SvgDrawing& drawing, double half, double from, double y, const std::string& words) {
  for (const double x : {middle - half, middle + half}) drawing.line({x, from + 4}, {x, y + 6}, 0.6);
  drawing.dimension({middle - half, y}, {middle + half, y}, words);
}

}  // namespace

std::string ring_picture(RingShape shape, const SizeRow& size, const std::string& title) {
  const double scale = widest / size.outside;
  const double outer = widest / 2, inner = size.inside * scale / 2;
  const double bottom = top + size.height * scale;
  SvgDrawing drawing(width, bottom + words_need * 2 + 50, title + ", cut through its middle");
  drawing.text({24, 34}, title, Anchor::start, true);
  drawing.line({middle, top - 40}, {middle, bottom + 20}, 0.8, true);
  draw_face(drawing, shape, {middle - outer, middle - inner, top, bottom, 1});
  draw_face(drawing, shape, {middle + inner, middle + outer, top, bottom, -1});
  draw_dimension(drawing, inner, bottom, bottom + words_need - 16,
                 "inside " + picture_number(size.inside, 4) + " mm");
  draw_dimension(drawing, outer, bottom, bottom + words_need * 2 - 16,
                 "outside " + picture_number(size.outside, 4) + " mm");
  const std::string height = shape == RingShape::o_ring     ? "section "
                             : shape == RingShape::lip_seal ? "height "
                                                            : "width ";
  const double beside = middle + outer + 24;
  for (const double y : {top, bottom}) drawing.line({middle + outer + 4, y}, {beside + 6, y}, 0.6);
  const std::string second = size.second_height ? "/" + picture_number(*size.second_height, 3) : "";
  upright_dimension(drawing, beside, top, bottom, height + picture_number(size.height, 3) + second + " mm");
  drawing.text({24, bottom + words_need * 2 + 30}, "Same size is not same part: material and use differ.");
  return drawing.finish();
}

}  // namespace sheaf
