// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/oil_blend.h"

#include <algorithm>
#include <cmath>

#include "query/trade/band.h"

namespace sheaf {
namespace {

constexpr Band viscosities{2, 1e5};
constexpr double rounding = 1e-9;  // a blend of share 0 or 1 comes back as the oil itself, but for this

double index_of(double v, BlendRule rule) {
  return rule == BlendRule::walther_volume ? std::log10(std::log10(v + 0.7))
                                           : 14.534 * std::log(std::log(v + 0.8)) + 10.975;
}

double viscosity_of(double index, BlendRule rule) {
  return rule == BlendRule::walther_volume ? std::pow(10, std::pow(10, index)) - 0.7
                                           : std::exp(std::exp((index - 10.975) / 14.534)) - 0.8;
}

std::optional<Failure> check(double first, double second) {
  return outside_range({{"viscosity of the first oil", first, viscosities, "mm²/s"},
                        {"viscosity of the second oil", second, viscosities, "mm²/s"}});
}

}  // namespace

Result<double> blend_viscosity(double first, double second, double share, BlendRule rule) {
  if (auto failure = check(first, second)) return *failure;
  if (auto failure = outside_range({{"share", share, {0, 1}, ""}})) return *failure;
  return viscosity_of((1 - share) * index_of(first, rule) + share * index_of(second, rule), rule);
}

Result<double> blend_share(double first, double second, double target, BlendRule rule) {
  if (auto failure = check(first, second)) return *failure;
  if (first == second) return Failure{"the two oils have the same viscosity"};
  const auto [thinner, thicker] = std::minmax(first, second);
  const Band blends{thinner * (1 - rounding), thicker * (1 + rounding)};
  if (!blends.holds(target)) {
    return Failure{"a blend lies between " + brief(thinner) + " and " + brief(thicker) + " mm²/s, not at " +
                   brief(target)};
  }
  const double share =
      (index_of(target, rule) - index_of(first, rule)) / (index_of(second, rule) - index_of(first, rule));
  return std::clamp(share, 0.0, 1.0);
}

}  // namespace sheaf
