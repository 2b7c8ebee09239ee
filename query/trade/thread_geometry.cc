// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/thread_geometry.h"

#include <cmath>
#include <numbers>

#include "query/trade/band.h"

namespace sheaf {
namespace {

const double height_per_pitch = std::numbers::sqrt3 / 2;

double circle(double diameter) { return std::numbers::pi / 4 * diameter * diameter; }

double to_three_figures(double value) {
  const double unit = std::pow(10, std::floor(std::log10(value)) - 2);
  return std::round(value / unit) * unit;
}

Result<ThreadGeometry> profile(double diameter, double pitch) {
  if (auto failure = outside_range({{"thread diameter", diameter, {0.25, 1000}, "mm"},
                                    {"pitch", pitch, {0.05, diameter / 2}, "mm"}})) {
    return *failure;
  }
  const double height = height_per_pitch * pitch;
  ThreadGeometry geometry;
  geometry.diameter = diameter;
  geometry.pitch = pitch;
  geometry.pitch_diameter = diameter - height * 3 / 4;
  geometry.minor_nut = diameter - height * 5 / 4;
  geometry.minor_screw = diameter - height * 17 / 12;
  return geometry;
}

}  // namespace

Result<ThreadGeometry> metric_geometry(double diameter_mm, double pitch_mm) {
  auto geometry = profile(diameter_mm, pitch_mm);
  if (!geometry) return geometry;
  ThreadGeometry metric = *geometry;
  metric.stress_area = circle((metric.pitch_diameter + metric.minor_screw) / 2);
  metric.load_area = to_three_figures(metric.stress_area);
  return metric;
}

Result<ThreadGeometry> inch_geometry(double diameter_mm, double pitch_mm) {
  auto geometry = profile(diameter_mm, pitch_mm);
  if (!geometry) return geometry;
  ThreadGeometry inch = *geometry;
  inch.stress_area = circle(diameter_mm - 0.9743 * pitch_mm);
  inch.load_area = inch.stress_area;
  return inch;
}

Result<ThreadGeometry> geometry_of(const Thread& thread) {
  if (thread.system == Thread::System::pipe) {
    return Failure{to_text(thread) + " is a pipe thread, which has another profile"};
  }
  const std::optional<double> pitch = pitch_mm(thread);
  if (!pitch) return Failure{to_text(thread) + " does not say its pitch"};
  const double diameter = diameter_mm(thread).value_or(0);
  return thread.system == Thread::System::metric ? metric_geometry(diameter, *pitch)
                                                 : inch_geometry(diameter, *pitch);
}

double tap_drill_mm(const ThreadGeometry& geometry) { return geometry.diameter - geometry.pitch; }

}  // namespace sheaf
