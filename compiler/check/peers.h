// SPDX-License-Identifier: GPL-2.0-or-later
// A figure among its like: the median of the others, and how far they spread.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "compiler/link/linked_sheets.h"

namespace sheafc {

// One value among its like. Values are positive.
struct Peer {
  const LinkedEntry* entry = nullptr;
  double value = 0;
};
using PeerGroups = std::map<std::string, std::vector<Peer>>;

inline constexpr std::size_t fewest_peers = 5;  // others, beside the one that is judged

// What the others say of one: their median, and whether it lies out of all proportion to their spread
// (over four median deviations of the logarithm, and at least threefold). Absent with too few others.
struct PeerVerdict {
  double median = 0;
  double ratio = 1;  // value / median
  std::size_t others = 0;
  bool outlying = false;
};
std::optional<PeerVerdict> judge_among_peers(std::span<const Peer> group, const Peer& one);

// The words of a name without sides, in alphabetical order: "front axle pinch bolts" -> "axle bolt pinch".
std::string role_of(std::string_view name);

}  // namespace sheafc
