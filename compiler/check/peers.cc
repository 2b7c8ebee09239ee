// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/peers.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "query/library/fold.h"

namespace sheafc {
namespace {

constexpr double log_threefold = 1.0986;
constexpr double deviations = 4;

double median_of(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::ranges::nth_element(values, middle);
  if (values.size() % 2 == 1) return *middle;
  return (*middle + *std::max_element(values.begin(), middle)) / 2;
}

// Variants and inherited copies of one place say the same thing once.
std::vector<double> logs_of_others(std::span<const Peer> group, const Peer& one) {
  std::vector<double> logs;
  for (const Peer& peer : group) {
    if (peer.entry->address != one.entry->address && !peer.entry->inherited) logs.push_back(std::log(peer.value));
  }
  return logs;
}

}  // namespace

std::optional<PeerVerdict> judge_among_peers(std::span<const Peer> group, const Peer& one) {
  const std::vector<double> logs = logs_of_others(group, one);
  if (logs.size() < fewest_peers) return {};
  const double median = median_of(logs);
  std::vector<double> distances;
  for (const double value : logs) distances.push_back(std::abs(value - median));
  const double away = std::abs(std::log(one.value) - median);
  PeerVerdict verdict;
  verdict.median = std::exp(median);
  verdict.ratio = one.value / verdict.median;
  verdict.others = logs.size();
  verdict.outlying = away > std::max(log_threefold, deviations * median_of(distances));
  return verdict;
}

std::string role_of(std::string_view name) {
  constexpr std::array<std::string_view, 14> sides = {"front", "rear", "left", "right", "upper", "lower", "inner", "outer",
                                                      "top",   "bottom", "the", "at", "of", "in"};
  std::vector<std::string> stems;
  for (const std::string& word : sheaf::words_of(sheaf::fold(name))) {
    if (std::ranges::find(sides, word) == sides.end()) stems.push_back(sheaf::stem_of(word));
  }
  std::ranges::sort(stems);
  std::string role;
  for (const std::string& stem : stems) role += (role.empty() ? "" : " ") + stem;
  return role;
}

}  // namespace sheafc
