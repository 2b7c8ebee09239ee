// SPDX-License-Identifier: GPL-2.0-or-later
// An O-ring in its groove.
//
//   squeeze   (cs − depth)/cs            geometry; public gland design tables say how much is right
//   stretch   (groove − id)/id           geometry, on the bottom of a groove in a shaft
//   section   cs/√(1 + stretch)          constant volume of rubber
//   fill      π/4 · cs²/(depth · width)  geometry
//
// Lengths in one unit of length, mm or in; answers are fractions of 1. Section 0.5 to 20 mm worth, inside
// up to 2000; a Failure outside, and where the ring is not squeezed at all.
#pragma once

#include "query/quantity/result.h"
#include "query/trade/band.h"

namespace sheaf {

struct ORing {
  double inside = 0;
  double section = 0;
};

struct Gland {
  double depth = 0;  // from the bottom of the groove to the sealed face
  double width = 0;
  double groove_diameter = 0;  // of the bottom the ring sits on; 0 for a face seal, which is not stretched
};

struct GlandVerdict {
  double stretch = 0;  // below 0: the ring is loose on the groove
  double section = 0;  // what stretching leaves of it, in the unit given
  double squeeze = 0;  // of the unstretched section, as the published tables have it
  double fill = 0;     // of the unstretched section
};
Result<GlandVerdict> reckon_gland(const ORing& ring, const Gland& gland);

// Squeeze over all limits: shallowest gland on the thickest ring, and the reverse.
Result<Band> squeeze_band(Band section, Band depth);

}  // namespace sheaf
