// SPDX-License-Identifier: GPL-2.0-or-later
// Viscosity index from the viscosities at 40 °C and 100 °C, ASTM D2270-10 (ISO 2909).
//
//   Y viscosity at 100 °C, U at 40 °C; L and H from Table 1, interpolated, or above 70 mm²/s
//   L = 0.8353 Y² + 14.67 Y − 216,  H = 0.1684 Y² + 11.85 Y − 97                  section 5.1.2
//   procedure A (VI up to 100):  VI = (L − U)/(L − H) · 100                        section 5.1
//   procedure B (100 and over):  VI = (10^N − 1)/0.00715 + 100, N = log(H/U)/log Y  section 6.1
//
// The standard gives the index as a whole number. It is not defined below 2 mm²/s at 100 °C.
#pragma once

#include <span>

#include "query/quantity/result.h"

namespace sheaf {

// One row of Table 1, ascending by viscosity_100.
struct IndexRow {
  double viscosity_100 = 0;  // Y
  double l = 0;
  double h = 0;
};

struct ViscosityIndex {
  double raw = 0;  // before rounding
  int index = 0;
  char procedure = 'A';  // or 'B'
  double l = 0, h = 0;
};

// Viscosities in mm²/s. Fails below 2 mm²/s at 100 °C, when the oil is not thinner at 100 °C, and when
// the rows do not reach the viscosity.
Result<ViscosityIndex> viscosity_index(double viscosity_40, double viscosity_100,
                                       std::span<const IndexRow> table);

}  // namespace sheaf
