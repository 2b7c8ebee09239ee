// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/peers.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <deque>
#include <random>

using namespace sheafc;

namespace {

double plain_median(std::vector<double> values) {
  std::ranges::sort(values);
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

// The same verdict as the definition reads, at the cost of the whole group each time.
std::optional<PeerVerdict> plain_verdict(std::span<const Peer> group, const Peer& one) {
  std::vector<double> logs, distances;
  for (const Peer& peer : group) {
    if (peer.entry->address != one.entry->address && !peer.entry->inherited) logs.push_back(std::log(peer.value));
  }
  if (logs.size() < fewest_peers) return {};
  const double median = plain_median(logs), own = std::log(one.value);
  for (const double log : logs) distances.push_back(std::abs(log - median));
  const double limit = std::max(1.0986, 4 * plain_median(distances));
  return PeerVerdict{std::exp(median), one.value / std::exp(median), logs.size(), std::abs(own - median) > limit};
}

struct Group {
  std::deque<LinkedEntry> entries;
  std::vector<Peer> peers;
};

// Addresses that sometimes come twice or more, side by side; sometimes few values, so that many are equal.
Group random_group(std::mt19937& random) {
  Group group;
  const std::size_t size = 1 + random() % 24;
  int address = 0;
  const bool coarse = random() % 2;
  for (std::size_t i = 0; i < size; ++i) {
    LinkedEntry& entry = group.entries.emplace_back();
    address += random() % 4 > 0;
    entry.address = "sheet/" + std::to_string(address);
    entry.inherited = random() % 8 == 0;
    group.peers.push_back({&entry, coarse ? 1 + static_cast<double>(random() % 4) : std::exp(static_cast<double>(random() % 1000) / 200)});
  }
  return group;
}

}  // namespace

TEST_CASE("a member of a group is judged as the definition reads") {
  std::mt19937 random(20261125);
  int judged = 0, outlying = 0;
  for (int round = 0; round < 3000; ++round) {
    const Group made = random_group(random);
    const PeerGroup group(made.peers);
    for (std::size_t i = 0; i < made.peers.size(); ++i) {
      const auto verdict = group.judge(i);
      const auto plain = plain_verdict(made.peers, made.peers[i]);
      REQUIRE(verdict.has_value() == plain.has_value());
      if (!verdict) continue;
      ++judged;
      outlying += verdict->outlying;
      REQUIRE(verdict->others == plain->others);
      REQUIRE(verdict->median == doctest::Approx(plain->median));
      REQUIRE(verdict->ratio == doctest::Approx(plain->ratio));
      REQUIRE(verdict->outlying == plain->outlying);
    }
  }
  CHECK(judged > 10000);
  CHECK(outlying > 200);
}
