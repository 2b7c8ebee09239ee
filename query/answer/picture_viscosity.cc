// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <cmath>

#include "query/answer/picture.h"
#include "query/answer/picture_parts.h"

namespace sheaf {
namespace {

constexpr double width = 720, height = 500, left = 90, right = 680, top = 70, bottom = 430;
constexpr int pieces = 160;

struct Chart {
  Axis temperature, logarithm;
  SvgDrawing::Point at(const ViscosityPoint& point) const {
    return {temperature.at(point.celsius), logarithm.at(std::log10(point.mm2_s))};
  }
};

// The points given and asked for, with some room around them.
Band temperatures_of(const ViscosityPicture& oil) {
  Band band{std::min(oil.first.celsius, oil.second.celsius), std::max(oil.first.celsius, oil.second.celsius)};
  for (const auto& point : oil.asked) {
    band.least = std::min(band.least, point.celsius);
    band.most = std::max(band.most, point.celsius);
  }
  return {std::max(band.least - 10, -70.0), std::min(band.most + 10, 370.0)};
}

std::vector<ViscosityPoint> points_of(const ViscosityLine& line, const Band& temperatures) {
  std::vector<ViscosityPoint> points;
  for (int i = 0; i <= pieces; ++i) {
    const double celsius = temperatures.least + (temperatures.most - temperatures.least) * i / pieces;
    if (const auto value = line.viscosity_at(celsius)) points.push_back({celsius, value->value});
  }
  return points;
}

void draw_grid(SvgDrawing& drawing, const Chart& chart, const Marks& temperatures, const Band& viscosities) {
  for (const double celsius : temperatures.at) {
    const double x = chart.temperature.at(celsius);
    drawing.line({x, top}, {x, bottom}, 0.5);
    drawing.text({x, bottom + 22}, picture_number(celsius), Anchor::middle);
  }
  for (const double viscosity : logarithmic_marks(viscosities)) {
    const double y = chart.logarithm.at(std::log10(viscosity));
    drawing.line({left, y}, {right, y}, 0.5);
    drawing.text({left - 10, y + 5}, picture_number(viscosity), Anchor::end);
  }
  drawing.text({left - 10, top - 16}, "mm²/s", Anchor::end);
  drawing.text({right, bottom + 46}, "°C", Anchor::end);
}

// Solid between the two points, broken beyond them.
void draw_line(SvgDrawing& drawing, const Chart& chart, const ViscosityPicture& oil,
               const std::vector<ViscosityPoint>& points) {
  const Band known{std::min(oil.first.celsius, oil.second.celsius),
                   std::max(oil.first.celsius, oil.second.celsius)};
  for (std::size_t i = 1; i < points.size(); ++i) {
    const bool is_known = known.holds(points[i - 1].celsius) && known.holds(points[i].celsius);
    if (is_known || i % 4 < 2) drawing.line(chart.at(points[i - 1]), chart.at(points[i]), is_known ? 3 : 2);
  }
}

void draw_point(SvgDrawing& drawing, const Chart& chart, const ViscosityPoint& point, bool given) {
  const auto at = chart.at(point);
  drawing.circle(at, 5, given);
  const bool at_the_edge = at.x > right - 120;
  drawing.text({at_the_edge ? at.x : at.x + 10, at.y - (at_the_edge ? 24 : 10)},
               picture_number(point.mm2_s) + " at " + picture_number(point.celsius) + " °C",
               at_the_edge ? Anchor::middle : Anchor::start);
}

}  // namespace

std::string viscosity_picture(const ViscosityPicture& oil) {
  SvgDrawing drawing(width, height, "Viscosity of an oil against temperature");
  drawing.text({24, 34}, "Viscosity against temperature", Anchor::start, true);
  const Marks marks = marks_for(temperatures_of(oil), 10);
  const Band temperatures{marks.at.front(), marks.at.back()};
  const auto points = points_of(oil.line, temperatures);
  if (points.size() < 2) return drawing.finish();
  const Band viscosities{points.back().mm2_s * 0.8, points.front().mm2_s * 1.25};
  const Chart chart{{temperatures, left, right},
                    {{std::log10(viscosities.least), std::log10(viscosities.most)}, bottom, top}};
  draw_grid(drawing, chart, marks, viscosities);
  draw_line(drawing, chart, oil, points);
  for (const auto& point : {oil.first, oil.second}) draw_point(drawing, chart, point, true);
  for (const auto& point : oil.asked) draw_point(drawing, chart, point, false);
  drawing.text({24, height - 20}, "full circle: given · open circle: reckoned · broken line: extrapolated");
  return drawing.finish();
}

}  // namespace sheaf
