// SPDX-License-Identifier: GPL-2.0-or-later
// Blends of two oils, both measured at the same temperature, and the share that reaches a target.
//
//   walther_volume  W = log10 log10(ν + 0.7), linear in the share by volume    ASTM D7152, procedure A
//   refutas_mass    V = 14.534 ln ln(ν + 0.8) + 10.975, linear in the share by mass
//                                    Maples, Petroleum Refinery Process Economics, 2nd ed. 2000
//
// The two agree to about 0.002 of the share. 2 to 10⁵ mm²/s; a Failure outside. Whether two oils may
// be mixed at all, no formula says.
#pragma once

#include "query/quantity/result.h"

namespace sheaf {

enum class BlendRule { walther_volume, refutas_mass };

// The viscosity of `share` (0 to 1) of the second oil in the first, mm²/s.
Result<double> blend_viscosity(double first, double second, double share,
                               BlendRule rule = BlendRule::walther_volume);

// The share of the second oil that gives the target. Fails when the target is not between the two.
Result<double> blend_share(double first, double second, double target,
                           BlendRule rule = BlendRule::walther_volume);

}  // namespace sheaf
