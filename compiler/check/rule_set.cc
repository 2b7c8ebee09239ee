// SPDX-License-Identifier: GPL-2.0-or-later
// The list of rules, by subject. Their order shows nowhere: reports are sorted by place.
#include "compiler/check/rules.h"

namespace sheafc {

std::span<const Rule* const> all_check_rules() {
  static constexpr const Rule* all[] = {
      // Fasteners
      &torque_over_proof_load,
      &torque_far_below,
      &torque_over_soft_thread,
      &torque_unlike_peers,
      &band_too_wide,
      &tolerance_over_a_third,
      &printed_pair_disagrees,
      &stages_out_of_order,
      &angle_unlike_sisters,
      &reuse_unstated,
      &state_missing,
      &lubricated_and_locked,
      &dry_equals_oiled,
      &hand_unstated,
      &pattern_unlike_count,
      &pattern_missing,
      &unknown_pitch,
      &unknown_class,
      &drive_unlike_thread,
      &sister_threads_differ,
      // Seals, rings, bearings, springs
      &seal_inside_out,
      &seal_height,
      &seal_unlike_tube,
      &o_ring_unlike_code,
      &bearing_unlike_designation,
      &lengths_out_of_order,
      // Fluids
      &fluid_volume_out_of_range,
      &fills_out_of_order,
      &dry_fill_over_double,
      &pair_for_leg,
      &level_incomplete,
      &level_unlike_volume,
      &viscosity_missing,
      &fluid_families_clash,
      // Settings, limits, clearances, pressures
      &setting_outside_range,
      &limit_on_wrong_side,
      &exhaust_clearance_smaller,
      &figure_out_of_range,
      &figure_unlike_peers,
      // Machines, parts, and sheets among each other
      &two_answers,
      &years_overlap,
      &years_gap,
      &twin_sheets,
      &names_nearly_equal,
      &left_and_right_differ,
      &supersession_circle,
      &successor_differs,
      // Safety and provenance
      &caution_missing,
      &second_reader_missing,
      &checked_long_ago,
      // Published tables
      &row_unlike_formula,
  };
  return all;
}

}  // namespace sheafc
