// SPDX-License-Identifier: GPL-2.0-or-later
// A figure among its like: the median of the others, and how far they spread.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "compiler/check/likeness.h"
#include "compiler/link/linked_sheets.h"

namespace sheafc {

// One value among its like. Values are positive.
struct Peer {
  const LinkedEntry* entry = nullptr;
  double value = 0;
  std::string_view key = {};  // the field that states it
};

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
  // Variants of one address side by side, as they stand on their sheet. The peers must outlive it.
  explicit PeerGroup(std::span<const Peer> peers);

  std::optional<PeerVerdict> judge(std::size_t one) const;  // of the peers; absent with too few others

 private:
  struct Run {
    std::size_t first, last;
  };
  std::span<const Peer> peers_;
  std::vector<double> logs_;         // ascending, of what is not inherited
  std::vector<std::size_t> places_;  // in logs_, of those in the peers' order
  std::vector<Run> own_;             // of each peer, where in places_ its address stands
};

// Peers by what makes them alike.
class PeerGroups {
 public:
  void add(Likeness alike, const Peer& peer) { all_.push_back({alike, peer}); }

  // Calls say(peer, verdict) for each that has enough others.
  void judge_each(const std::function<void(const Peer&, const PeerVerdict&)>& say);

 private:
  struct Member {
    Likeness alike;
    Peer peer;
  };
  std::vector<Member> all_;
};

// The words of a name without sides, in alphabetical order: "front axle pinch bolts" -> "axle bolt pinch".
std::string role_of(std::string_view name);

// The same for many names, of which most come again.
class Roles {
 public:
  const std::string& of(const std::string& name);  // which must outlive it

 private:
  std::unordered_map<std::string_view, std::string> known_;
};

}  // namespace sheafc
