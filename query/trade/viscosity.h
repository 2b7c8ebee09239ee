// SPDX-License-Identifier: GPL-2.0-or-later
// Kinematic viscosity of an oil at any temperature, from two points of it.
//
//   log10 log10 Z = A − B · log10 T,  T in K = °C + 273.15                        ASTM D341-09, Eq. 1
//   Z = ν + 0.7 + exp(−1.47 − 1.84 ν − 0.51 ν²)                                   the same, Eq. 2
//   ν = (Z − 0.7) − exp(−0.7487 − 3.295 (Z − 0.7) + 0.6119 (Z − 0.7)² − 0.3193 (Z − 0.7)³)   Eq. 3
//
// (Constants of the exponential terms from memory; above 2 mm²/s they add less than 0.001.)
// Holds for 0.21 to 2·10⁷ mm²/s and −70 to 370 °C; a Failure outside. Between the two points it is
// sound to about a per cent; beyond them it is extrapolation, and the answer says so. It knows
// nothing of pour points: below one, the oil does not flow at all.
#pragma once

#include "query/quantity/result.h"

namespace sheaf {

struct ViscosityPoint {
  double celsius = 0;
  double mm2_s = 0;
};

// The straight line through two points on ASTM D341 paper.
class ViscosityLine {
 public:
  // Fails unless the points are 5 °C apart or more and the hotter one is thinner.
  static Result<ViscosityLine> through(ViscosityPoint first, ViscosityPoint second);

  struct Value {
    double value = 0;
    bool extrapolated = false;  // outside the two points
  };
  Result<Value> viscosity_at(double celsius) const;  // mm²/s
  Result<Value> temperature_of(double mm2_s) const;  // °C

  double a() const { return a_; }
  double b() const { return b_; }

 private:
  ViscosityLine() = default;
  bool between(double celsius) const { return celsius >= coldest_ && celsius <= hottest_; }

  double a_ = 0, b_ = 0;
  double coldest_ = 0, hottest_ = 0;
};

// Dynamic viscosity in mPa·s of an oil of that density in kg/m³: ν · ρ / 1000.
Result<double> dynamic_viscosity(double mm2_s, double density_kg_m3);

}  // namespace sheaf
