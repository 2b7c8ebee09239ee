// SPDX-License-Identifier: GPL-2.0-or-later
// Drawings for those who rather look: SVG, black on white, every line said in words beside it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/quantity/figure.h"
#include "query/trade/band.h"
#include "query/trade/size_match.h"
#include "query/trade/viscosity.h"

namespace sheaf {

// A torque, N·m, and where it comes from.
struct TorqueBar {
  std::string name;
  Band torque_nm;
};

// Bands of torque above a wrench's scale, or above a scale from 0 that holds them.
std::string torque_picture(const std::string& thread, const std::vector<TorqueBar>& bars,
                           const std::optional<Figure>& wrench_scale);

// Viscosity against temperature: the oil's line, dashed beyond its two points, and the temperature asked for.
struct ViscosityPicture {
  ViscosityLine line;
  ViscosityPoint first, second;
  std::vector<ViscosityPoint> asked;
};
std::string viscosity_picture(const ViscosityPicture& oil);

// A fork leg cut open, its tube upright, with the oil in it. Lengths in mm.
struct LegPicture {
  double bore_mm = 0, length_mm = 0, level_mm = 0, rod_mm = 0;
  std::string volume;  // "512 mL"
};
std::string leg_picture(const LegPicture& leg);

// A ring cut through its middle, half of it, with its dimensions. An O-ring's height is its section.
enum class RingShape { lip_seal, o_ring, bearing, bushing };
std::string ring_picture(RingShape shape, const SizeRow& size, const std::string& title);

}  // namespace sheaf
