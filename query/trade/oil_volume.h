// SPDX-License-Identifier: GPL-2.0-or-later
// How much oil stands in a tube, and how high; what heat adds; which bottles to buy.
//
//   volume of a height      V = π/4 · (D² − d²) · h            geometry; D the bore, d what stands in the oil
//   level below the rim     g = L − (V + Vs) / (π/4 · D²)      geometry; Vs the volume dipped (rod, spring)
//   spring in the oil       Vs = π/4 · d² · π · D · n          the wire's length times its section
//   heat                    ΔV = V · β · ΔT                     β about 0.00065 to 0.0008 /K for mineral oil,
//   rule of thumb air spring              p = p0 · (h0/(h0 − s))^n            n = 1 isothermal, 1.4 adiabatic
//
// Lengths in mm, volumes in mL. A smaller level (air gap) is MORE oil. Bores 5 to 200 mm, tubes to
// 2000 mm; a Failure outside, and where the oil would run over or the tube be empty.
#pragma once

#include <span>
#include <vector>

#include "query/quantity/result.h"

namespace sheaf {

// What one mm of level is worth, mL, with a rod (or none: 0) through the surface.
Result<double> volume_per_mm(double bore_mm, double rod_mm);
Result<double> volume_of_height(double bore_mm, double rod_mm, double height_mm);  // mL
Result<double> height_of_volume(double bore_mm, double rod_mm, double volume_ml);  // mm

// What a dipped rod or the wire of a spring takes up, mL.
Result<double> rod_volume(double rod_mm, double dipped_mm);
Result<double> spring_wire_volume(double wire_mm, double mean_diameter_mm, double coils_in_oil);

// A tube closed below: its bore, its length from the closed end to the rim from which the level is
// measured, and what stands in the oil while it is measured.
struct OilTube {
  double bore_mm = 0;
  double length_mm = 0;
  double displaced_ml = 0;
};
Result<double> level_below_rim(const OilTube& tube, double volume_ml);  // mm
Result<double> volume_at_level(const OilTube& tube, double level_mm);   // mL

// The volume at another temperature, mL. Expansion 0.0001 to 0.002 per K, −60 to 200 °C.
Result<double> volume_at_temperature(double volume_ml, double from_celsius, double to_celsius,
                                     double expansion_per_k);

// Absolute pressure of the air over the oil after a stroke, in the unit of the pressure at rest.
Result<double> air_spring_pressure(double rest_pressure, double gap_mm, double stroke_mm, double exponent);

// Whole bottles that hold at least the volume: least oil left over first, then fewest bottles.
// Bottles and counts stand in the order of the sizes given.
struct Bottles {
  std::vector<int> counts;
  double bought_ml = 0;
  double left_over_ml = 0;
};
Result<Bottles> bottles_for(double volume_ml, std::span<const double> sizes_ml);

}  // namespace sheaf
