// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/tightening.h"

#include <cmath>
#include <numbers>

namespace sheaf {
namespace {

constexpr double most_force = 1e9;   // N
constexpr double most_torque = 1e7;  // N·m
constexpr double mm_per_m = 1000;
constexpr Band factors{0.03, 1};
constexpr Band coefficients{0.01, 1};
constexpr Band diameters{0.25, 1000};
const double sec_30 = 2 / std::numbers::sqrt3;

bool in_order(const Band& band) { return band.least <= band.most; }

}  // namespace

Result<double> torque_by_nut_factor(double preload_n, double nut_factor, double diameter_mm) {
  if (auto failure = outside_range({{"preload", preload_n, {0, most_force}, "N"},
                                    {"nut factor", nut_factor, factors, ""},
                                    {"diameter", diameter_mm, diameters, "mm"}})) {
    return *failure;
  }
  return nut_factor * preload_n * diameter_mm / mm_per_m;
}

Result<double> preload_by_nut_factor(double torque_nm, double nut_factor, double diameter_mm) {
  if (auto failure = outside_range({{"torque", torque_nm, {0, most_torque}, "N·m"},
                                    {"nut factor", nut_factor, factors, ""},
                                    {"diameter", diameter_mm, diameters, "mm"}})) {
    return *failure;
  }
  return torque_nm * mm_per_m / (nut_factor * diameter_mm);
}

Result<Band> preload_band(Band torque_nm, Band nut_factor, double diameter_mm) {
  if (!in_order(torque_nm) || !in_order(nut_factor)) return Failure{"a band's least is more than its most"};
  const auto least = preload_by_nut_factor(torque_nm.least, nut_factor.most, diameter_mm);
  const auto most = preload_by_nut_factor(torque_nm.most, nut_factor.least, diameter_mm);
  if (!least) return least.failure();
  if (!most) return most.failure();
  return Band{*least, *most};
}

Result<Band> torque_band(Band preload_n, Band nut_factor, double diameter_mm) {
  if (!in_order(preload_n) || !in_order(nut_factor)) return Failure{"a band's least is more than its most"};
  const auto least = torque_by_nut_factor(preload_n.least, nut_factor.least, diameter_mm);
  const auto most = torque_by_nut_factor(preload_n.most, nut_factor.most, diameter_mm);
  if (!least) return least.failure();
  if (!most) return most.failure();
  return Band{*least, *most};
}

double mean_head_diameter(const ThreadGeometry& geometry) { return 1.25 * geometry.diameter; }

double mean_head_diameter(double face_mm, double hole_mm) { return (face_mm + hole_mm) / 2; }

Result<double> nut_factor_from_friction(const ThreadGeometry& geometry, Friction friction,
                                        double mean_head_mm) {
  if (auto failure = outside_range({{"thread friction", friction.thread, coefficients, ""},
                                    {"head friction", friction.head, coefficients, ""},
                                    {"mean diameter under the head",
                                     mean_head_mm,
                                     {geometry.diameter * 0.8, geometry.diameter * 5},
                                     "mm"}})) {
    return *failure;
  }
  const double lead = geometry.pitch / (std::numbers::pi * geometry.pitch_diameter);
  const double wedge = friction.thread * sec_30;
  const double thread_arm = geometry.pitch_diameter / 2 * (lead + wedge) / (1 - lead * wedge);
  const double head_arm = friction.head * mean_head_mm / 2;
  return (thread_arm + head_arm) / geometry.diameter;
}

Result<double> torque_long_form(double preload_n, const ThreadGeometry& geometry, Friction friction,
                                double mean_head_mm) {
  const auto factor = nut_factor_from_friction(geometry, friction, mean_head_mm);
  if (!factor) return factor;
  if (auto failure = outside_range({{"preload", preload_n, {0, most_force}, "N"}})) return *failure;
  return *factor * preload_n * geometry.diameter / mm_per_m;
}

Result<double> preload_long_form(double torque_nm, const ThreadGeometry& geometry, Friction friction,
                                 double mean_head_mm) {
  const auto factor = nut_factor_from_friction(geometry, friction, mean_head_mm);
  if (!factor) return factor;
  if (auto failure = outside_range({{"torque", torque_nm, {0, most_torque}, "N·m"}})) return *failure;
  return torque_nm * mm_per_m / (*factor * geometry.diameter);
}

Result<Band> preload_band(Band torque_nm, const ThreadGeometry& geometry, Friction least, Friction most,
                          double mean_head_mm) {
  if (!in_order(torque_nm) || least.thread > most.thread || least.head > most.head) {
    return Failure{"a band's least is more than its most"};
  }
  const auto weakest = preload_long_form(torque_nm.least, geometry, most, mean_head_mm);
  const auto strongest = preload_long_form(torque_nm.most, geometry, least, mean_head_mm);
  if (!weakest) return weakest.failure();
  if (!strongest) return strongest.failure();
  return Band{*weakest, *strongest};
}

Result<double> assembly_preload_n(const ThreadGeometry& geometry, double yield_mpa, double share,
                                  double thread_friction) {
  if (auto failure = outside_range({{"yield stress", yield_mpa, {1, 3000}, "MPa"},
                                    {"share of the yield stress", share, {0.1, 1}, ""},
                                    {"thread friction", thread_friction, coefficients, ""}})) {
    return *failure;
  }
  const double stress_diameter = std::sqrt(4 * geometry.stress_area / std::numbers::pi);
  const double lead = geometry.pitch / (std::numbers::pi * geometry.pitch_diameter);
  const double twist = 1.5 * geometry.pitch_diameter / stress_diameter * (lead + 1.155 * thread_friction);
  return share * yield_mpa * geometry.stress_area / std::sqrt(1 + 3 * twist * twist);
}

Result<double> tightening_angle(double preload_n, double pitch_mm, double screw_stiffness,
                                double parts_stiffness) {
  if (auto failure = outside_range({{"preload", preload_n, {0, most_force}, "N"},
                                    {"pitch", pitch_mm, {0.05, 100}, "mm"},
                                    {"stiffness of the screw", screw_stiffness, {1, 1e9}, "N/mm"},
                                    {"stiffness of the parts", parts_stiffness, {1, 1e9}, "N/mm"}})) {
    return *failure;
  }
  return 360 * preload_n / pitch_mm * (1 / screw_stiffness + 1 / parts_stiffness);
}

Result<double> torque_to_proof_ratio(double torque_nm, double diameter_mm, double proof_load_n) {
  if (auto failure = outside_range({{"torque", torque_nm, {0, most_torque}, "N·m"},
                                    {"diameter", diameter_mm, diameters, "mm"},
                                    {"proof load", proof_load_n, {1, most_force}, "N"}})) {
    return *failure;
  }
  return torque_nm * mm_per_m / (diameter_mm * proof_load_n);
}

}  // namespace sheaf
