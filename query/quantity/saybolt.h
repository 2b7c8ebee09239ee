// SPDX-License-Identifier: GPL-2.0-or-later
// Saybolt Universal seconds: a viscosity told by the time that oil takes to run out of a cup. No factor
// leads there; ASTM D2161 gives an equation, for v in mm²/s at the temperature of the test in °F:
//
//   SUS = (1 + 0.000061 (t - 100)) · (4.6324 v + (1 + 0.03264 v) / ((3930.2 + 262.7 v + 23.97 v² + 1.646 v³)
//   · 10⁻⁵))
//
// Source: ASTM D2161, equation 1, from memory; checked in the tests against the linear multipliers printed
// in its section 5.2 (4.632 at 100 °F, 4.664 at 210 °F) and a published conversion table. It is worked in
// floating point, since it is itself good to three or four digits only; bounds are still rounded inward.
#pragma once

#include "query/quantity/convert.h"

namespace sheaf {

// SUS for a kinematic viscosity in mm²/s at a temperature in °C; both at that temperature. Below
// least_saybolt_viscosity the standard has no value, and the functions below refuse.
double saybolt_seconds(double viscosity, double celsius);
double viscosity_of_saybolt(double seconds, double celsius);
inline constexpr double least_saybolt_viscosity = 1.81;  // mm²/s, about 32 s; from memory

// From a kinematic viscosity to SUS, or from SUS to a kinematic viscosity, at a temperature.
Result<Converted> convert_saybolt(const Figure& figure, const Unit& unit, const Quantity& temperature);

// Whether one of the units is of kinematic and the other of Saybolt viscosity.
bool is_saybolt_pair(const Unit& from, const Unit& to);

}  // namespace sheaf
