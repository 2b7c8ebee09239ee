// SPDX-License-Identifier: GPL-2.0-or-later
// What slip of the pen, or of the unit, would explain a figure that cannot be right.
#pragma once

#include <string>

#include "query/quantity/figure.h"
#include "query/trade/band.h"

namespace sheafc {

// "; a slipped decimal? 28 N·m fits", or nothing where no slip brings `written` (in N·m) into the
// plausible band. The corrected value is in the figure's own unit.
std::string suspected_torque_slip(double written_nm, const sheaf::Figure& figure, sheaf::Band plausible_nm);

// The slip that a ratio to the usual value betrays, within 15 %: "a slipped decimal?", "inch-pounds
// written as foot-pounds?"; empty if none.
std::string slip_of_ratio(double ratio);

}  // namespace sheafc
