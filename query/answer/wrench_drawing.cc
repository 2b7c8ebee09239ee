// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/wrench_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "query/answer/picture.h"
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

namespace {

using Point = SvgDrawing::Point;
constexpr double width = 760, margin = 24;

// The wrench lies level with its grip at the left; the drawing is as large as the paper allows.
struct Layout {
  Point hand, square, fastener;
  double highest = 0, lowest = 0;  // of all that is drawn
};

Layout laid_out(const WrenchGeometry& geometry, double top) {
  constexpr double left = 70, right = 130, room = 44;
  const double angle = geometry.degrees * std::numbers::pi / 180;
  const double longest = geometry.hand_to_drive + std::max(0.0, reach_of(geometry));
  const double scale = (width - left - right) / std::max(longest, 1.0);
  const double across = geometry.drive_to_fastener * std::cos(angle) * scale;
  const double rise = geometry.drive_to_fastener * std::sin(angle) * scale;
  const double level = top + room + std::max(0.0, rise);
  const double drive = left + geometry.hand_to_drive * scale;
  return {{left, level},
          {drive, level},
          {drive + across, level - rise},
          level - std::max(0.0, rise) - room,
          level + std::max(0.0, -rise) + room};
}

// Beside the fastener, away from the adapter that leads to it.
void name_fastener(SvgDrawing& picture, const Layout& at, double degrees) {
  constexpr double beside = 24, letter = 5;
  const bool leads_back = std::abs(degrees) > 100;
  if (std::abs(degrees) <= 60)
    return picture.text({at.fastener.x + beside, at.fastener.y + letter}, "fastener");
  const bool above = degrees > 0 || leads_back;
  const double y = at.fastener.y + (above && degrees >= 0 ? -beside : beside + 2 * letter);
  picture.text({at.fastener.x, y}, "fastener", Anchor::middle);
}

void draw_wrench(SvgDrawing& picture, const Layout& at, double degrees) {
  constexpr double grip = 26, across = 14;
  const double level = at.hand.y;
  picture.line(at.square, {at.square.x + 90, level}, 1, true);
  picture.line(at.hand, at.square, 10);
  picture.line({at.hand.x - grip, level}, {at.hand.x + grip, level}, 18);
  picture.line(at.square, at.fastener, 6);
  picture.rectangle({at.square.x - across / 2, level - across / 2}, across, across);
  picture.circle(at.fastener, across, false);
  picture.circle(at.fastener, across / 3, true);
  if (std::abs(degrees) > 1) picture.arc(at.square, 44, 0, degrees);
  picture.text({at.hand.x, level - 20}, "hand", Anchor::middle);
  name_fastener(picture, at, degrees);
}

}  // namespace

std::string svg(const WrenchGeometry& geometry, const WrenchAnswer& answer) {
  constexpr double room = width - 2 * margin;
  const std::string title =
      geometry.wrench + " with " + geometry.adapter + " at " + degrees_words(geometry.degrees);
  SvgDrawing words(width, 0, "");  // nothing but a ruler: how high the words are
  const std::string set = "Set " + set_line(answer.stages.front());
  const double top = words.paragraph({margin, 60}, set, room);
  const Layout at = laid_out(geometry, top);
  const std::string formula =
      "setting = T · L/(L + E · cos θ); L from hand to square, E = " + geometry.offset +
      " from square to fastener, θ = " + degrees_words(geometry.degrees);
  const double below = at.lowest + 30;
  const double end = words.paragraph(
      {margin, words.paragraph({margin, below + 36}, in_words(geometry), room)}, formula, room);
  SvgDrawing picture(width, end, title);
  picture.text({margin, 34}, title, Anchor::start, true);
  picture.paragraph({margin, 60}, set, room);
  draw_wrench(picture, at, geometry.degrees);
  picture.dimension({at.hand.x, below}, {at.square.x, below}, "L = " + geometry.length);
  picture.paragraph({margin, picture.paragraph({margin, below + 36}, in_words(geometry), room)}, formula,
                    room);
  return picture.finish();
}

namespace {

// "32" and "38 N·m"; nothing where the band is open, and no least where both ends are one.
TorqueBar bar_of(std::string name, const Figure& figure, Band nm) {
  const auto words = [&](const std::optional<Number>& end) { return end ? shown(*end) : std::string(); };
  const std::string unit = " " + std::string(figure.unit->symbol);
  if (!figure.least && !figure.most) return {std::move(name), nm, "", words(figure.nominal) + unit};
  const std::string most = words(figure.most);
  return {std::move(name), nm, words(figure.least) + (most.empty() ? unit : ""),
          most.empty() ? "" : most + unit};
}

}  // namespace

std::optional<std::string> band_svg(const WrenchAnswer& answer) {
  for (const auto& stage : answer.stages) {
    if (!stage.can_be_set()) continue;
    const WrenchChoice& choice = stage.choices.front();
    const TorqueWrench& scale = choice.wrench.scale;
    const BaseBand band = base_band(stage.band);
    const bool is_bare = !stage.band.least && !stage.band.most;
    const std::string asked = is_bare                                   ? "asked"
                              : stage.tolerance_of == ToleranceOf::shop ? "shop's band"
                                                                        : "band";
    return torque_picture({shown(stage.asked) + " on the " + choice.wrench.name,
                           "Set " + set_line(stage) + ".",
                           {bar_of(asked, stage.band, {band.least, band.most}),
                            bar_of("it gives", choice.torque, choice.setting.torque_nm)},
                           scale.unit,
                           Figure{Form::range, {}, scale.least, scale.most, {}, scale.unit},
                           choice.on_scale});
  }
  return std::nullopt;
}

}  // namespace sheaf
