// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/peers.h"

#include <algorithm>
#include <cmath>

namespace sheafc {
namespace {

constexpr double log_threefold = 1.0986;  // rounded down, so that threefold itself counts
constexpr double deviations = 4;

// An ascending list of which a few places are left out.
struct Others {
  const std::vector<double>& values;
  std::span<const std::size_t> left_out;  // places, ascending

  std::size_t size() const { return values.size() - left_out.size(); }
  double operator[](std::size_t rank) const {
    for (const std::size_t place : left_out) {
      if (place > rank) break;
      ++rank;
    }
    return values[rank];
  }
  std::size_t below(double value) const {
    const auto place = static_cast<std::size_t>(std::ranges::lower_bound(values, value) - values.begin());
    return place - static_cast<std::size_t>(std::ranges::lower_bound(left_out, place) - left_out.begin());
  }
};

// The middle one of so many, or the mean of the middle two; `at` gives them in ascending order.
double middle(std::size_t count, const auto& at) {
  return count % 2 == 1 ? at(count / 2) : (at(count / 2 - 1) + at(count / 2)) / 2;
}

// The distance from `centre` that so many others do not reach. They stand in two ascending rows, one on each
// side of it: bisects how many of those nearest stand below.
double distance_at(const Others& others, double centre, std::size_t rank) {
  const std::size_t below = others.below(centre), above = others.size() - below;
  const auto down = [&](std::size_t i) { return centre - others[below - 1 - i]; };
  const auto up = [&](std::size_t i) { return others[below + i] - centre; };
  std::size_t least = rank + 1 > above ? rank + 1 - above : 0, most = std::min(rank + 1, below);
  while (least < most) {
    const std::size_t taken = (least + most) / 2;
    if (down(taken) < up(rank - taken))
      least = taken + 1;
    else
      most = taken;
  }
  const double last_below = least > 0 ? down(least - 1) : 0;
  const double last_above = rank + 1 > least ? up(rank - least) : 0;
  return std::max(last_below, last_above);
}

}  // namespace

PeerGroup::PeerGroup(FactGroup peers) : peers_(peers) {
  std::vector<std::pair<double, std::size_t>> sorted;  // and its turn among those not inherited
  for (std::size_t i = 0; i < peers.size(); ++i) {
    const bool same = i > 0 && peers[i].same_address(peers[i - 1]);
    const std::size_t first = same ? own_.back().first : sorted.size();
    if (!peers[i].inherited) sorted.emplace_back(std::log(peers[i].number()), sorted.size());
    own_.push_back({first, sorted.size()});
  }
  for (std::size_t i = own_.size(); i-- > 1;) {
    if (peers[i].same_address(peers[i - 1])) own_[i - 1].last = own_[i].last;
  }
  std::ranges::sort(sorted);
  places_.resize(sorted.size());
  for (const auto& [log, turn] : sorted) {
    places_[turn] = logs_.size();
    logs_.push_back(log);
  }
  for (const Run& run : own_) std::ranges::sort(std::span(places_).subspan(run.first, run.last - run.first));
}

std::optional<PeerVerdict> PeerGroup::judge(std::size_t one) const {
  const Others others{logs_, std::span(places_).subspan(own_[one].first, own_[one].last - own_[one].first)};
  if (others.size() < fewest_peers) return {};
  const double median = middle(others.size(), [&](std::size_t rank) { return others[rank]; });
  const double spread =
      middle(others.size(), [&](std::size_t rank) { return distance_at(others, median, rank); });
  const double away = std::abs(std::log(peers_[one].number()) - median);
  PeerVerdict verdict;
  verdict.median = std::exp(median);
  verdict.ratio = peers_[one].number() / verdict.median;
  verdict.others = others.size();
  verdict.outlying = away > std::max(log_threefold, deviations * spread);
  return verdict;
}

bool may_hold_outlying(FactGroup peers) {
  if (peers.size() <= fewest_peers) return false;
  const auto [least, greatest] = std::ranges::minmax(peers, {}, &Fact::number);
  return greatest.number() >= 3 * (1 - 1e-9) * least.number();
}

void judge_each(FactGroup peers, const std::function<void(const Fact&, const PeerVerdict&)>& say) {
  if (peers.size() <= fewest_peers) return;
  const PeerGroup group(peers);
  for (std::size_t one = 0; one < peers.size(); ++one) {
    if (const auto verdict = group.judge(one)) say(peers[one], *verdict);
  }
}

}  // namespace sheafc
