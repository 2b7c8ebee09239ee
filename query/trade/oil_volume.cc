// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/oil_volume.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "query/trade/band.h"

namespace sheaf {
namespace {

constexpr double mm3_per_ml = 1000;
constexpr Band bores{5, 200};
constexpr Band lengths{1, 2000};
constexpr Band volumes{0, 1e6};

double circle(double diameter) { return std::numbers::pi / 4 * diameter * diameter; }

// The ring of oil round the rod, mm².
Result<double> ring(double bore_mm, double rod_mm) {
  if (auto failure = outside_range({{"bore", bore_mm, bores, "mm"}, {"rod", rod_mm, {0, 200}, "mm"}}))
    return *failure;
  if (rod_mm >= bore_mm)
    return Failure{"a rod of " + brief(rod_mm) + " mm leaves no room in a bore of " + brief(bore_mm) + " mm"};
  return circle(bore_mm) - circle(rod_mm);
}

std::optional<Failure> check(const OilTube& tube) {
  return outside_range({{"bore", tube.bore_mm, bores, "mm"},
                        {"length of the tube", tube.length_mm, lengths, "mm"},
                        {"displaced volume", tube.displaced_ml, volumes, "mL"}});
}

}  // namespace

Result<double> volume_per_mm(double bore_mm, double rod_mm) { return volume_of_height(bore_mm, rod_mm, 1); }

Result<double> volume_of_height(double bore_mm, double rod_mm, double height_mm) {
  const auto area = ring(bore_mm, rod_mm);
  if (!area) return area;
  if (auto failure = outside_range({{"height", height_mm, {0, lengths.most}, "mm"}})) return *failure;
  return *area * height_mm / mm3_per_ml;
}

Result<double> height_of_volume(double bore_mm, double rod_mm, double volume_ml) {
  const auto area = ring(bore_mm, rod_mm);
  if (!area) return area;
  if (auto failure = outside_range({{"volume", volume_ml, volumes, "mL"}})) return *failure;
  return volume_ml * mm3_per_ml / *area;
}

Result<double> rod_volume(double rod_mm, double dipped_mm) {
  if (auto failure = outside_range(
          {{"rod", rod_mm, {0, 200}, "mm"}, {"dipped length", dipped_mm, {0, lengths.most}, "mm"}})) {
    return *failure;
  }
  return circle(rod_mm) * dipped_mm / mm3_per_ml;
}

Result<double> spring_wire_volume(double wire_mm, double mean_diameter_mm, double coils_in_oil) {
  if (auto failure = outside_range({{"wire", wire_mm, {0.1, 50}, "mm"},
                                    {"mean diameter", mean_diameter_mm, {wire_mm, 500}, "mm"},
                                    {"coils in the oil", coils_in_oil, {0, 500}, ""}})) {
    return *failure;
  }
  return circle(wire_mm) * std::numbers::pi * mean_diameter_mm * coils_in_oil / mm3_per_ml;
}

Result<double> level_below_rim(const OilTube& tube, double volume_ml) {
  if (auto failure = check(tube)) return *failure;
  if (auto failure = outside_range({{"volume", volume_ml, volumes, "mL"}})) return *failure;
  const double level = tube.length_mm - (volume_ml + tube.displaced_ml) * mm3_per_ml / circle(tube.bore_mm);
  if (level < 0) return Failure{brief(volume_ml) + " mL is more than the tube holds"};
  return level;
}

Result<double> volume_at_level(const OilTube& tube, double level_mm) {
  if (auto failure = check(tube)) return *failure;
  if (auto failure = outside_range({{"level", level_mm, {0, tube.length_mm}, "mm"}})) return *failure;
  const double volume = circle(tube.bore_mm) * (tube.length_mm - level_mm) / mm3_per_ml - tube.displaced_ml;
  if (volume < 0) return Failure{"at that level the parts in the oil alone fill the tube"};
  return volume;
}

Result<double> volume_at_temperature(double volume_ml, double from_celsius, double to_celsius,
                                     double expansion_per_k) {
  if (auto failure = outside_range({{"volume", volume_ml, volumes, "mL"},
                                    {"temperature", from_celsius, {-60, 200}, "°C"},
                                    {"temperature", to_celsius, {-60, 200}, "°C"},
                                    {"expansion", expansion_per_k, {0.0001, 0.002}, "per K"}})) {
    return *failure;
  }
  return volume_ml * (1 + expansion_per_k * (to_celsius - from_celsius));
}

Result<double> air_spring_pressure(double rest_pressure, double gap_mm, double stroke_mm, double exponent) {
  if (auto failure = outside_range({{"pressure at rest", rest_pressure, {1e-3, 1e7}, ""},
                                    {"air gap", gap_mm, lengths, "mm"},
                                    {"stroke", stroke_mm, {0, gap_mm * 0.99}, "mm"},
                                    {"exponent", exponent, {1, 1.67}, ""}})) {
    return *failure;
  }
  return rest_pressure * std::pow(gap_mm / (gap_mm - stroke_mm), exponent);
}

namespace {

// The fewest bottles for each reachable volume, counted in whole mL; -1 where none reaches it.
struct Reach {
  int bottles = -1;
  int last_size = -1;
};

std::vector<Reach> reachable(int up_to, std::span<const int> sizes) {
  std::vector<Reach> reach(static_cast<std::size_t>(up_to) + 1);
  reach[0].bottles = 0;
  for (int volume = 1; volume <= up_to; ++volume) {
    Reach& here = reach[static_cast<std::size_t>(volume)];
    for (std::size_t i = 0; i < sizes.size(); ++i) {
      if (sizes[i] > volume) continue;
      const Reach& before = reach[static_cast<std::size_t>(volume - sizes[i])];
      if (before.bottles >= 0 && (here.bottles < 0 || before.bottles + 1 < here.bottles)) {
        here = {before.bottles + 1, static_cast<int>(i)};
      }
    }
  }
  return reach;
}

}  // namespace

Result<Bottles> bottles_for(double volume_ml, std::span<const double> sizes_ml) {
  constexpr double most_ml = 500'000;  // 500 L: above it, whole drums are counted by hand
  if (auto failure = outside_range({{"volume", volume_ml, {0.001, most_ml}, "mL"}})) return *failure;
  if (sizes_ml.empty() || sizes_ml.size() > 16) return Failure{"one to sixteen bottle sizes are needed"};
  std::vector<int> sizes;
  for (double size : sizes_ml) {
    if (auto failure = outside_range({{"bottle", size, {1, most_ml}, "mL"}})) return *failure;
    sizes.push_back(static_cast<int>(size));  // a bottle of 946.4 mL holds 946 whole ones
  }
  const int needed = static_cast<int>(std::ceil(volume_ml));
  const int up_to = needed + *std::max_element(sizes.begin(), sizes.end());
  const std::vector<Reach> reach = reachable(up_to, sizes);
  int volume = needed;
  while (reach[static_cast<std::size_t>(volume)].bottles < 0)
    ++volume;  // ends: a whole number of any size is reached

  Bottles result;
  result.counts.assign(sizes.size(), 0);
  for (int left = volume; left > 0;) {
    const auto size = static_cast<std::size_t>(reach[static_cast<std::size_t>(left)].last_size);
    ++result.counts[size];
    result.bought_ml += sizes_ml[size];
    left -= sizes[size];
  }
  result.left_over_ml = result.bought_ml - volume_ml;
  return result;
}

}  // namespace sheaf
