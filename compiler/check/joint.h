// SPDX-License-Identifier: GPL-2.0-or-later
// How hard a torque works a fastener, judged by what its joint is.
//
// The measure is r = T/(d · Sp · As): the nut factor times the share of the proof load (Shigley,
// Mechanical Engineering Design, Eq. 8-27). Ordinary steel joints stand at 0.09 to 0.17, axle nuts, caps,
// plugs and adjusters far lower (common practice, no source).
#pragma once

#include <optional>
#include <string>

#include "compiler/check/shelf.h"

namespace sheafc {

struct Joint {
  double diameter_mm = 0;
  double bears_nm = 0;  // d · Sp · As: the torque at which r is 1
  bool class_stated = false;
  bool ordinary = false;  // clamped by its screw's tension: too little is a fault as well

  double ratio(double torque_nm) const { return torque_nm / bears_nm; }
};

// None where the tables have no such thread or class. Without a class, the class that `assumed` names
// is taken.
std::optional<Joint> joint_of(const LinkedEntry& fastener, const Shelf& shelf, std::string_view assumed);

// "M8x1.25 class 8.8"; "M8x1.25 of any class" where none is stated. Its thread must be.
std::string screw_of(const LinkedEntry& fastener);

// The torque for one fastener in N·m, the greatest of its stages: a total is shared out by the count.
std::optional<double> torque_of_one_nm(const LinkedEntry& fastener);

}  // namespace sheafc
