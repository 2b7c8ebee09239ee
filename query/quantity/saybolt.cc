// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/saybolt.h"

#include <algorithm>
#include <cmath>

#include "query/quantity/exact.h"

namespace sheaf {
namespace {

constexpr double most_viscosity = 1e7;  // mm²/s: no oil is thicker
constexpr int three_digit_places = 6;   // the most places three digits are looked for in

double base_value(const Quantity& quantity) {
  const Figure figure{Form::nominal, quantity.value, {}, {}, {}, quantity.unit};
  return base_band(figure).least;
}

double celsius_of(const Quantity& temperature) { return base_value(temperature) - 273.15; }

// What the figure's numbers become: mm²/s to SUS in one direction, SUS to the other unit's in the other.
class Curve {
 public:
  Curve(const Unit& from, const Unit& to, double celsius) : from_(from), to_(to), celsius_(celsius) {}

  double operator()(const Number& number) const {
    const double value = approximate(number);
    if (to_.dimension == Dimension::saybolt_viscosity) {
      return saybolt_seconds(value * in_mm2_per_s(from_), celsius_);
    }
    return viscosity_of_saybolt(value, celsius_) / in_mm2_per_s(to_);
  }
  bool in_range(const Number& number) const {
    const double value = approximate(number);
    const double viscosity = to_.dimension == Dimension::saybolt_viscosity
                                 ? value * in_mm2_per_s(from_)
                                 : viscosity_of_saybolt(value, celsius_);
    return viscosity >= least_saybolt_viscosity * (1 - 1e-9) && viscosity <= most_viscosity;
  }

 private:
  static double in_mm2_per_s(const Unit& unit) {
    return 1e6 * static_cast<double>(unit.factor.numerator) / static_cast<double>(unit.factor.denominator);
  }

  const Unit& from_;
  const Unit& to_;
  double celsius_;
};

Number rounded(double value, int places, Rounding rounding) {
  const double scaled = value * std::pow(10.0, places);
  const double digits = rounding == Rounding::nearest ? std::round(scaled)
                        : rounding == Rounding::up    ? std::ceil(scaled)
                                                      : std::floor(scaled);
  return {static_cast<std::int64_t>(digits), static_cast<std::uint8_t>(places), 1};
}

// Three digits of the value, or as many places as one step of the source's last digit moves it by.
int places_for(const Curve& curve, const Number& number, double value) {
  Number next = number;
  ++next.digits;
  const double moved = std::abs(curve(next) - value);
  const int for_step = static_cast<int>(std::ceil(-std::log10(moved) - 1e-9));
  const int for_digits = 2 - static_cast<int>(std::floor(std::log10(value)));
  return std::clamp(std::max(for_step, for_digits), 0, three_digit_places);
}

}  // namespace

double saybolt_seconds(double viscosity, double celsius) {
  const double v = viscosity;
  const double fahrenheit = celsius * 1.8 + 32;
  const double curved =
      (1.0 + 0.03264 * v) / ((3930.2 + 262.7 * v + 23.97 * v * v + 1.646 * v * v * v) * 1e-5);
  return (1 + 0.000061 * (fahrenheit - 100)) * (4.6324 * v + curved);
}

// The equation rises all the way, so that halving finds its only root.
double viscosity_of_saybolt(double seconds, double celsius) {
  double low = 0, high = most_viscosity * 2;
  for (int i = 0; i < 200 && high - low > 1e-15 * high; ++i) {
    const double middle = (low + high) / 2;
    (saybolt_seconds(middle, celsius) < seconds ? low : high) = middle;
  }
  return (low + high) / 2;
}

bool is_saybolt_pair(const Unit& from, const Unit& to) {
  return (from.dimension == Dimension::kinematic_viscosity && to.dimension == Dimension::saybolt_viscosity) ||
         (from.dimension == Dimension::saybolt_viscosity && to.dimension == Dimension::kinematic_viscosity);
}

Result<Converted> convert_saybolt(const Figure& figure, const Unit& unit, const Quantity& temperature) {
  if (temperature.unit->dimension != Dimension::temperature) {
    return Failure{"a Saybolt second needs a temperature, as in \"at 40 °C\""};
  }
  const double celsius = celsius_of(temperature);
  if (celsius < -50 || celsius > 300) return Failure{"no Saybolt viscosity is taken at such a temperature"};
  const Curve curve(*figure.unit, unit, celsius);
  for (const auto& number : {figure.nominal, figure.least, figure.most}) {
    if (number && !curve.in_range(*number)) {
      return Failure{"ASTM D2161 gives no Saybolt seconds below 1.81 mm²/s, about 32 SUS"};
    }
  }
  const Number& leading = figure.nominal ? *figure.nominal : figure.most ? *figure.most : *figure.least;
  const int places = places_for(curve, leading, curve(leading));
  Converted result;
  result.figure.unit = &unit;
  if (figure.nominal) result.figure.nominal = rounded(curve(*figure.nominal), places, Rounding::nearest);
  if (figure.least) result.figure.least = rounded(curve(*figure.least), places, Rounding::up);
  if (figure.most) result.figure.most = rounded(curve(*figure.most), places, Rounding::down);
  if (result.figure.least && result.figure.most && compare(*result.figure.least, *result.figure.most) > 0) {
    return Failure{"the band is too narrow to be told in " + std::string(unit.symbol)};
  }
  const bool banded = figure.least && figure.most;
  result.figure.form = banded ? Form::range : figure.form;
  return result;
}

}  // namespace sheaf
