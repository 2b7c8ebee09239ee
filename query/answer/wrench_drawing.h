// SPDX-License-Identifier: GPL-2.0-or-later
// A wrench with an adapter at an angle, seen from above: in signs for a page of text, and to scale as SVG.
#pragma once

#include <string>
#include <vector>

#include "query/answer/wrench.h"

namespace sheaf {

// The geometry that is drawn; lengths in mm.
struct WrenchGeometry {
  double hand_to_drive = 0;
  double drive_to_fastener = 0;
  double degrees = 0;
  std::string length, offset;  // as shown: "420 mm"
  std::string wrench, adapter;
};

// Of the wrench that comes first; none without an adapter, or where no wrench can be used with it.
std::optional<WrenchGeometry> geometry_of(const WrenchAnswer& answer);

// "It lengthens the wrench: it acts as 465 mm long instead of 420 mm."
std::string in_words(const WrenchGeometry& geometry);

// Lines of plain signs, at most `width` columns wide; the angle is drawn to the nearest eighth of a turn.
std::vector<std::string> drawing(const WrenchGeometry& geometry, int width);

// A whole SVG document, black on white; the angle and the lengths are to scale.
std::string svg(const WrenchGeometry& geometry, const WrenchAnswer& answer);

// The same without an adapter: the band that was asked for and what the wrench gives, above its scale with
// the mark to set. Of the first stage that can be set; none if none can.
std::optional<std::string> band_svg(const WrenchAnswer& answer);

}  // namespace sheaf
