// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/viscosity.h"

#include <algorithm>
#include <cmath>

#include "query/trade/band.h"

namespace sheaf {
namespace {

constexpr double kelvin = 273.15;
constexpr Band temperatures{-70, 370};
constexpr Band viscosities{0.21, 2e7};
constexpr double least_apart = 5;  // °C: closer points say more of their rounding than of the oil

double z_of(double v) { return v + 0.7 + std::exp(-1.47 - 1.84 * v - 0.51 * v * v); }

double viscosity_of_z(double z) {
  const double x = z - 0.7;
  return x - std::exp(-0.7487 - 3.295 * x + 0.6119 * x * x - 0.3193 * x * x * x);
}

double ordinate(double v) { return std::log10(std::log10(z_of(v))); }
double abscissa(double celsius) { return std::log10(celsius + kelvin); }

std::optional<Failure> check(ViscosityPoint point) {
  return outside_range(
      {{"temperature", point.celsius, temperatures, "°C"}, {"viscosity", point.mm2_s, viscosities, "mm²/s"}});
}

}  // namespace

Result<ViscosityLine> ViscosityLine::through(ViscosityPoint first, ViscosityPoint second) {
  if (auto failure = check(first)) return *failure;
  if (auto failure = check(second)) return *failure;
  if (first.celsius > second.celsius) std::swap(first, second);
  if (second.celsius - first.celsius < least_apart) {
    return Failure{"the two temperatures are less than " + brief(least_apart) + " °C apart"};
  }
  if (first.mm2_s <= second.mm2_s)
    return Failure{"an oil is thinner when hotter; these two points say otherwise"};
  ViscosityLine line;
  line.b_ =
      (ordinate(first.mm2_s) - ordinate(second.mm2_s)) / (abscissa(second.celsius) - abscissa(first.celsius));
  line.a_ = ordinate(first.mm2_s) + line.b_ * abscissa(first.celsius);
  line.coldest_ = first.celsius;
  line.hottest_ = second.celsius;
  return line;
}

Result<ViscosityLine::Value> ViscosityLine::viscosity_at(double celsius) const {
  if (auto failure = outside_range({{"temperature", celsius, temperatures, "°C"}})) return *failure;
  const double z = std::pow(10, std::pow(10, a_ - b_ * abscissa(celsius)));
  const double v = viscosity_of_z(z);
  if (auto failure = outside_range({{"viscosity", v, viscosities, "mm²/s"}})) return *failure;
  return Value{v, !between(celsius)};
}

Result<ViscosityLine::Value> ViscosityLine::temperature_of(double mm2_s) const {
  if (auto failure = outside_range({{"viscosity", mm2_s, viscosities, "mm²/s"}})) return *failure;
  const double celsius = std::pow(10, (a_ - ordinate(mm2_s)) / b_) - kelvin;
  if (auto failure = outside_range({{"temperature", celsius, temperatures, "°C"}})) return *failure;
  return Value{celsius, !between(celsius)};
}

Result<double> dynamic_viscosity(double mm2_s, double density_kg_m3) {
  if (auto failure = outside_range(
          {{"viscosity", mm2_s, viscosities, "mm²/s"}, {"density", density_kg_m3, {500, 2000}, "kg/m³"}})) {
    return *failure;
  }
  return mm2_s * density_kg_m3 / 1000;
}

}  // namespace sheaf
