// SPDX-License-Identifier: GPL-2.0-or-later
// Which torque wrench can do a torque, and what to set on its scale, with an adapter or without.
//
//   adapter   setting = T · L/(L + E · cos θ)      US Army TM 9-254 figures 45 and 46; FAA AC 43.13-1B fig.
//   7-2
//             L from the hand to the drive, E from the drive to the fastener, θ between them: 0° lengthens
//             the wrench, 180° points back at the hand. At 90° nothing changes as long as E is short against
//             L.
//   accuracy  of ± a of the reading (ISO 6789-1): a setting s gives from s·(1 − a) to s/(1 − a). That covers
//             both readings of the rule, deviation of the setting and deviation of the torque given.
//   range     below a fifth of its largest value a wrench is not dependable      US Army TM 1-1500-204-23-9
//
// Torques in N·m, lengths in mm, accuracy in per cent.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "query/quantity/figure.h"
#include "query/quantity/result.h"
#include "query/trade/band.h"

namespace sheaf {

inline constexpr double dependable_share = 0.2;

struct Adapter {
  double hand_to_drive_mm = 0;      // L, 50 to 3000
  double drive_to_fastener_mm = 0;  // E, 0 to 1000
  double degrees = 0;               // θ, −180 to 180
};

// Torque at the fastener over torque on the scale: (L + E cos θ)/L. Fails on impossible geometry: an adapter
// that reaches back to the hand or beyond it.
Result<double> adapter_factor(const Adapter& adapter);
Result<double> setting_with_adapter(double torque, const Adapter& adapter);  // in the torque's own unit
Result<double> torque_with_adapter(double setting, const Adapter& adapter);

// A wrench as the shop's crib has it. Its scale is marked from `least` to `most` in steps.
struct TorqueWrench {
  Number least, most, step;
  const Unit* unit = nullptr;
  double accuracy = 4;  // ± per cent of the reading
};

// What the source asks for. A figure without tolerance has no band, unless the shop's own default (per
// cent) makes one; a minimum or a maximum has one end.
struct TorqueTarget {
  std::optional<double> nominal;      // N·m; of a range, its middle
  std::optional<double> least, most;  // N·m
};
Result<TorqueTarget> torque_target(const Figure& torque, std::optional<double> default_tolerance = {});

struct WrenchSetting {
  enum class Verdict {
    holds,         // the whole of setting ± accuracy lies in the band
    spreads,       // the source states no tolerance: nothing to hold, the spread is shown
    leaves,        // the nearest setting may leave the band
    out_of_range,  // the torque is beyond the scale
  };
  std::size_t wrench = 0;  // index into the wrenches given
  Verdict verdict = Verdict::out_of_range;
  Number setting;          // on its scale, in its unit; not meaningful when out of range
  Band torque_nm;          // at the fastener, over the accuracy
  double margin = 0;       // least distance from the band's ends as a share of the setting; below 0: leaves
  bool dependable = true;  // false: below a fifth of its largest value
};

// Every wrench, best first: those that hold (dependable ones before others, then by margin), then those
// that only spread, leave, or do not reach. With an adapter, the settings are corrected for it.
Result<std::vector<WrenchSetting>> settings_for(const TorqueTarget& target,
                                                std::span<const TorqueWrench> wrenches,
                                                const std::optional<Adapter>& adapter = {});

// The worst accuracy (± per cent) with which some wrench could still hold the band: what to look for
// when none in the crib can. (1 − a)² = least/most.
Result<double> accuracy_needed(Band torque_nm);

// The accuracy ISO 6789-1 allows an adjustable wrench of that largest value: ± 6 % up to 10 N·m, ± 4 % above.
// (Seen second-hand; the printed table comes first.)
double allowed_accuracy(double largest_nm);

}  // namespace sheaf
