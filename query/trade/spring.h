// SPDX-License-Identifier: GPL-2.0-or-later
// Round-wire compression springs, and springs together.
//
//   rate       k = G d⁴ / (8 D³ n)     Shigley, Machine Design, Eq. 10-9; EN 13906-1
//   index      C = D/d                 made from about 4 to 20 (EN 13906-1)
//   D          mean diameter: outside less one wire, or inside plus one
//   n          active coils: all, less 2 for closed and ground ends
//   series     1/k = 1/k1 + 1/k2       one spring on the other
//   parallel   k = k1 + k2             one beside the other, as the two legs of a fork
//   preload    F = k · x               x the shortening from free length
//
// Lengths in mm, G in MPa, rates in N/mm, forces in N. Wire 0.1 to 50 mm, index 2.5 to 30, 1 to 500 active
// coils, G 1 000 to 120 000 MPa; a Failure outside.
#pragma once

#include "query/quantity/result.h"
#include "query/trade/band.h"

namespace sheaf {

struct CoilSpring {
  double wire_mm = 0;
  double mean_diameter_mm = 0;
  double active_coils = 0;
};

double mean_from_outside(double outside_mm, double wire_mm);
double mean_from_inside(double inside_mm, double wire_mm);

Result<double> spring_rate(const CoilSpring& spring, double shear_modulus_mpa);  // N/mm
Result<Band> spring_rate(const CoilSpring& spring,
                         Band shear_modulus_mpa);  // N/mm: the modulus is seldom known better
double spring_index(const CoilSpring& spring);

// Until the softer of a stacked pair goes solid; after that, the stiffer's rate alone.
Result<double> series_rate(double first, double second);    // N/mm
Result<double> parallel_rate(double first, double second);  // N/mm

Result<double> spring_force(double rate, double shortening_mm);  // N
Result<double> shortening_for(double rate, double force_n);      // mm

// The length at which the coils touch, squared and ground ends: all coils · d (common practice).
double solid_length(double wire_mm, double all_coils);

}  // namespace sheaf
