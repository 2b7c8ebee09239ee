// SPDX-License-Identifier: GPL-2.0-or-later
// Drawings for those who rather look: SVG, black on white, every line said in words beside it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/quantity/figure.h"
#include "query/trade/band.h"
#include "query/trade/o_ring.h"
#include "query/trade/size_match.h"
#include "query/trade/viscosity.h"

namespace sheaf {

// A torque, N·m, where it comes from, and its ends as they are said beside it: "33.6", "36.5 N·m".
struct TorqueBar {
  std::string name;
  Band torque_nm;
  std::string least, most;
};

// Bands of torque above a wrench's scale, or above one from 0 that holds them, marked in that unit; and the
// mark to set.
struct TorquePicture {
  std::string title, footer;
  std::vector<TorqueBar> bars;
  const Unit* unit = nullptr;
  std::optional<Figure> wrench_scale;
  std::optional<Quantity> set;
};
std::string torque_picture(const TorquePicture& torque);

// Viscosity against temperature: the oil's line, dashed beyond its two points, and the temperature asked for.
struct ViscosityPicture {
  ViscosityLine line;
  ViscosityPoint first, second;
  std::vector<ViscosityPoint> asked;
};
std::string viscosity_picture(const ViscosityPicture& oil);

// A fork leg cut open, its tube upright, with the oil in it. Lengths in mm.
struct LegPicture {
  double bore_mm = 0, length_mm = 0, level_mm = 0;
  double rod_mm = 0, dipped_mm = 0;  // what stands in the oil, and how deep in it
  std::string volume;                // "512 mL"
};
std::string leg_picture(const LegPicture& leg);

// A ring cut through its middle, half of it, with its dimensions. An O-ring's height is its section.
enum class RingShape { lip_seal, o_ring, bearing, bushing };
std::string ring_picture(RingShape shape, const SizeRow& size, const std::string& title);

// An O-ring in its groove, squeezed against the face that it seals; free, it is drawn in broken line.
std::string gland_picture(const ORing& ring, const Gland& gland, const GlandVerdict& verdict);

}  // namespace sheaf
