// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/wrench_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "query/answer/svg.h"
#include "query/quantity/unit.h"

namespace sheaf {
namespace {

constexpr int eighths = 8;

std::string degrees_words(double degrees) {
  const auto tenths = static_cast<std::int64_t>(std::llround(degrees * 10));
  const Number number = tenths % 10 == 0 ? Number{tenths / 10, 0, 1} : Number{tenths, 1, 1};
  return shown(number) + "°";
}

std::string whole_mm(double length) { return shown(Number{std::llround(length), 0, 1}) + "\u00A0mm"; }

double reach_of(const WrenchGeometry& geometry) {
  return geometry.drive_to_fastener * std::cos(geometry.degrees * std::numbers::pi / 180);
}

// A sheet of signs; what lies outside is not drawn.
class Sheet {
 public:
  Sheet(int width, int height)
      : rows_(static_cast<std::size_t>(height), std::string(static_cast<std::size_t>(width), ' ')) {}

  void put(int x, int y, std::string_view signs) {
    if (y < 0 || y >= static_cast<int>(rows_.size())) return;
    for (std::size_t i = 0; i < signs.size(); ++i) {
      const auto at = static_cast<std::size_t>(x) + i;
      if (x >= 0 && at < rows_[0].size()) rows_[static_cast<std::size_t>(y)][at] = signs[i];
    }
  }

  std::vector<std::string> lines() const {
    std::vector<std::string> lines = rows_;
    for (auto& line : lines) line.erase(line.find_last_not_of(' ') + 1);
    return lines;
  }

 private:
  std::vector<std::string> rows_;
};

struct Direction {
  int dx, dy;  // a row is about twice as high as a column is wide
  char sign;
};
constexpr std::array<Direction, eighths> directions = {{{1, 0, '-'},
                                                        {2, -1, '/'},
                                                        {0, -1, '|'},
                                                        {-2, -1, '\\'},
                                                        {-1, 0, '-'},
                                                        {-2, 1, '/'},
                                                        {0, 1, '|'},
                                                        {2, 1, '\\'}}};

int direction_of(double degrees) {
  return (static_cast<int>(std::lround(degrees / 45)) % eighths + eighths) % eighths;
}

}  // namespace

std::optional<WrenchGeometry> geometry_of(const WrenchAnswer& answer) {
  if (!answer.adapter || answer.stages.empty() || answer.stages.front().choices.empty()) return std::nullopt;
  const CribWrench& wrench = answer.stages.front().choices.front().wrench;
  if (!wrench.length) return std::nullopt;
  const CribAdapter& adapter = answer.adapter->adapter;
  return WrenchGeometry{millimetres(*wrench.length),
                        millimetres(adapter.offset),
                        answer.adapter->degrees,
                        shown(*wrench.length),
                        shown(adapter.offset),
                        wrench.name,
                        adapter.name};
}

std::string in_words(const WrenchGeometry& geometry) {
  const double reach = reach_of(geometry);
  const std::string angle = degrees_words(geometry.degrees);
  const bool straight = geometry.degrees == 0, back = std::abs(geometry.degrees) == 180;
  std::string words = straight ? "Straight on (" + angle + ")"
                      : back   ? "Turned back to the hand (" + angle + ")"
                               : "At " + angle + " to the wrench";
  if (std::abs(reach) < 0.5)
    return words +
           " it changes nothing: set the torque itself, as long as the adapter is short against the wrench.";
  words += reach > 0 ? " it lengthens the wrench" : " it shortens the wrench";
  return words + ": as if it were " + whole_mm(geometry.hand_to_drive + reach) + " long instead of " +
         geometry.length + ", so the scale is set " + (reach > 0 ? "lower" : "higher") + " than the torque.";
}

std::vector<std::string> drawing(const WrenchGeometry& geometry, int width) {
  constexpr int shortest = 3, hand = 3;
  const int direction = direction_of(geometry.degrees);
  const Direction step = directions[static_cast<std::size_t>(direction)];
  const int shaft = std::clamp(width - 26, 10, 40);
  const double share = geometry.drive_to_fastener / std::max(geometry.hand_to_drive, 1.0);
  const int columns = std::clamp(static_cast<int>(std::lround(shaft * share)), shortest + 1, shaft / 2);
  const int steps = std::max(step.dy == 0 ? columns : columns / 2, shortest);
  const bool back = direction == eighths / 2;  // drawn beside the wrench that it lies along
  const int rise = back ? 1 : step.dy == 0 ? 0 : steps + 1;
  const int baseline = step.dy > 0 ? 0 : rise;
  Sheet sheet(shaft + 2 * hand + 2 * (steps + 2) + 12, rise + 1);
  const int square = hand + shaft;
  sheet.put(0, baseline, "(=)");
  for (int x = hand; x < square; ++x) sheet.put(x, baseline, "=");
  const int middle = square + 1;
  if (back) sheet.put(middle, baseline - 1, "+");
  int x = middle, y = back ? baseline - 1 : baseline;
  for (int i = 0; i < steps; ++i) {
    x += step.dx == 2 && i == 0 ? 1 : step.dx == -2 && i == 0 ? -1 : step.dx;
    y += step.dy;
    if (step.dy != 0 || back || std::abs(x - middle) > 1) sheet.put(x, y, std::string_view(&step.sign, 1));
  }
  sheet.put(step.dy != 0 ? x + step.dx - 1 : step.dx > 0 ? x + 1 : x - 3, y + step.dy, "(o)");
  sheet.put(square, baseline, "[#]");
  return sheet.lines();
}

std::string svg(const WrenchGeometry& geometry, const WrenchAnswer& answer) {
  using Point = SvgDrawing::Point;
  constexpr double width = 760, margin = 60, top = 90, grip = 26, across = 14;
  const double angle = geometry.degrees * std::numbers::pi / 180;
  const double longest = geometry.hand_to_drive + std::max(0.0, reach_of(geometry));
  const double scale = (width - 2 * margin) / std::max(longest, 1.0);
  const double rise = geometry.drive_to_fastener * std::sin(angle) * scale;
  const double baseline = top + std::max(0.0, rise);
  const double height = baseline + std::max(0.0, -rise) + 150;
  SvgDrawing picture(
      width, height,
      geometry.wrench + " with " + geometry.adapter + " at " + degrees_words(geometry.degrees));
  const Point hand{margin, baseline}, square{margin + geometry.hand_to_drive * scale, baseline};
  const Point fastener{square.x + geometry.drive_to_fastener * std::cos(angle) * scale, baseline - rise};
  picture.line(square, {std::min(square.x + 90, width - 8), baseline}, 1, true);
  picture.line(hand, square, 10);
  picture.line({hand.x - grip, baseline}, {hand.x + grip, baseline}, 18);
  picture.line(square, fastener, 6);
  picture.rectangle({square.x - across / 2, baseline - across / 2}, across, across);
  picture.circle(fastener, across, false);
  picture.circle(fastener, across / 3, true);
  if (std::abs(geometry.degrees) > 1) picture.arc(square, 44, 0, geometry.degrees);
  const double below = baseline + std::max(0.0, -rise) + 56;
  picture.dimension({hand.x, below}, {square.x, below}, "L = " + geometry.length);
  picture.text({fastener.x, fastener.y - 24}, "fastener", Anchor::middle);
  picture.text({hand.x, baseline - 24}, "hand", Anchor::middle);
  picture.text({margin, 30},
               "E = " + geometry.offset + " from square to fastener, θ = " + degrees_words(geometry.degrees));
  const auto& stage = answer.stages.front();
  picture.text({margin, 54}, "Set " + set_line(stage), Anchor::start, true);
  picture.text({margin, below + 34}, in_words(geometry));
  picture.text({margin, below + 60}, "setting = T · L/(L + E · cos θ)");
  return picture.finish();
}

}  // namespace sheaf
