// SPDX-License-Identifier: GPL-2.0-or-later
// Torque and preload of a screwed joint, both ways, as bands over a range of friction.
//
//   nut factor   T = K · F · d                                               Shigley, Machine Design, Eq.
//   8-27 long form    T = F · [ d2/2 · (tan λ + μt sec α)/(1 − μt tan λ sec α) + μh · Dm/2 ]        the same,
//   Eq. 8-26
//                tan λ = P/(π d2), α = 30° for 60° threads, Dm the mean diameter under the head
//   head         Dm = 1.25 d where the head's own diameters are not known    the same (washer-faced nuts)
//                Dm = (dw + dh)/2 from its bearing face and the hole         VDI 2230 Part 1
//   assembly     F = ν · Rp · As / √(1 + 3 · (3/2 · d2/ds · (P/(π d2) + 1.155 μt))²)   VDI 2230 Part 1, ds =
//   √(4 As/π) angle        θ = 360° · F/P · (1/kb + 1/km)                              elastic joint, Shigley
//   ch. 8
//
// Torque in N·m, force in N, lengths in mm. A computed torque never replaces the maker's.
#pragma once

#include <optional>

#include "query/quantity/result.h"
#include "query/trade/band.h"
#include "query/trade/thread_geometry.h"

namespace sheaf {

inline constexpr std::string_view torque_caution = "A computed torque never replaces the maker's.";

// Nut factors from 0.03 to 1, diameters from 0.25 to 1000 mm; a Failure outside, and for a negative
// force or torque.
Result<double> torque_by_nut_factor(double preload_n, double nut_factor, double diameter_mm);   // N·m
Result<double> preload_by_nut_factor(double torque_nm, double nut_factor, double diameter_mm);  // N

// The most preload comes of the most torque on the most slippery thread, and so the least.
Result<Band> preload_band(Band torque_nm, Band nut_factor, double diameter_mm);  // N
Result<Band> torque_band(Band preload_n, Band nut_factor, double diameter_mm);   // N·m

// Friction coefficients 0.01 to 1 at the thread and under the head.
struct Friction {
  double thread = 0;
  double head = 0;
};
double mean_head_diameter(const ThreadGeometry& geometry);  // 1.25 d
double mean_head_diameter(double face_mm, double hole_mm);  // (dw + dh)/2

// The long form is a nut factor that follows from geometry and friction: T = K F d with this K.
Result<double> nut_factor_from_friction(const ThreadGeometry& geometry, Friction friction,
                                        double mean_head_mm);

Result<double> torque_long_form(double preload_n, const ThreadGeometry& geometry, Friction friction,
                                double mean_head_mm);  // N·m
Result<double> preload_long_form(double torque_nm, const ThreadGeometry& geometry, Friction friction,
                                 double mean_head_mm);  // N
Result<Band> preload_band(Band torque_nm, const ThreadGeometry& geometry, Friction least, Friction most,
                          double mean_head_mm);  // N

// The preload at which tension and the torsion of tightening together reach `share` (0.1 to 1) of
// the yield stress.
Result<double> assembly_preload_n(const ThreadGeometry& geometry, double yield_mpa, double share,
                                  double thread_friction);

// The angle that tightens from snug to the preload, in degrees. Stiffness of screw and parts in N/mm.
Result<double> tightening_angle(double preload_n, double pitch_mm, double screw_stiffness,
                                double parts_stiffness);

// How hard a torque works a screw: T/(d · Fp), which is the nut factor times the share of the proof
// load. Common joints lie between 0.09 and 0.17 (common practice); no screw bears much over 0.28.
Result<double> torque_to_proof_ratio(double torque_nm, double diameter_mm, double proof_load_n);

}  // namespace sheaf
