// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/o_ring.h"

#include <cmath>
#include <numbers>

namespace sheaf {

Result<GlandVerdict> reckon_gland(const ORing& ring, const Gland& gland) {
  if (auto failure =
          outside_range({{"section of the O-ring", ring.section, {0.01, 50}, ""},
                         {"inside of the O-ring", ring.inside, {0.01, 5000}, ""},
                         {"depth of the groove", gland.depth, {ring.section * 0.3, ring.section}, ""},
                         {"width of the groove", gland.width, {ring.section * 0.5, ring.section * 20}, ""},
                         {"diameter of the groove", gland.groove_diameter, {0, ring.inside * 2}, ""}})) {
    return *failure;
  }
  GlandVerdict verdict;
  if (gland.groove_diameter > 0) verdict.stretch = (gland.groove_diameter - ring.inside) / ring.inside;
  verdict.section = verdict.stretch > 0 ? ring.section / std::sqrt(1 + verdict.stretch) : ring.section;
  verdict.squeeze = (ring.section - gland.depth) / ring.section;
  verdict.fill = std::numbers::pi / 4 * ring.section * ring.section / (gland.depth * gland.width);
  return verdict;
}

Result<Band> squeeze_band(Band section, Band depth) {
  if (auto failure =
          outside_range({{"section of the O-ring", section.least, {0.01, section.most}, ""},
                         {"section of the O-ring", section.most, {0.01, 50}, ""},
                         {"depth of the groove", depth.least, {section.most * 0.3, depth.most}, ""},
                         {"depth of the groove", depth.most, {0.01, section.least}, ""}})) {
    return *failure;
  }
  return Band{1 - depth.most / section.least, 1 - depth.least / section.most};
}

}  // namespace sheaf
