// SPDX-License-Identifier: GPL-2.0-or-later
// A figure among its like: the median of the others, and how far they spread.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "compiler/check/rule_set.h"

namespace sheafc {

inline constexpr std::size_t fewest_peers = 5;  // others, beside the one that is judged

// What the others say of one: their median, and whether it lies out of all proportion to their spread
// (over four median deviations of the logarithm, and at least threefold).
struct PeerVerdict {
  double median = 0;
  double ratio = 1;  // value / median
  std::size_t others = 0;
  bool outlying = false;
};

// A group made ready once, so that each of its members is judged in the logarithm of its size. Variants of
// one address are no others of each other, and what a sheet inherits says nothing that its base did not.
class PeerGroup {
 public:
  // Each says a positive number; in the order of sheets and entries. The facts must outlive it.
  explicit PeerGroup(FactGroup peers);

  std::optional<PeerVerdict> judge(std::size_t one) const;  // of the peers; absent with too few others

 private:
  struct Run {
    std::size_t first, last;
  };
  FactGroup peers_;
  std::vector<double> logs_;         // ascending, of what is not inherited
  std::vector<std::size_t> places_;  // in logs_, of those in the peers' order
  std::vector<Run> own_;             // of each peer, where in places_ its address stands
};

// False if no member can be outlying, which the least and the greatest alone tell.
bool may_hold_outlying(FactGroup peers);

// Calls say(peer, verdict) for each that has enough others.
void judge_each(FactGroup peers, const std::function<void(const Fact&, const PeerVerdict&)>& say);

}  // namespace sheafc
