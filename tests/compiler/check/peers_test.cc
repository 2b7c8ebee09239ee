// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/peers.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>

using namespace sheafc;

namespace {

double plain_median(std::vector<double> values) {
  std::ranges::sort(values);
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

// The same verdict as the definition reads, at the cost of the whole group each time.
std::optional<PeerVerdict> plain_verdict(FactGroup group, const Fact& one) {
  std::vector<double> logs, distances;
  for (const Fact& peer : group) {
    if (!peer.same_address(one) && !peer.inherited) logs.push_back(std::log(peer.number()));
  }
  if (logs.size() < fewest_peers) return {};
  const double median = plain_median(logs), own = std::log(one.number());
  for (const double log : logs) distances.push_back(std::abs(log - median));
  const double limit = std::max(1.0986, 4 * plain_median(distances));
  return PeerVerdict{std::exp(median), one.number() / std::exp(median), logs.size(),
                     std::abs(own - median) > limit};
}

// Addresses that sometimes come twice or more, side by side; sometimes few values, so that many are equal.
std::vector<Fact> random_group(std::mt19937& random) {
  std::vector<Fact> group;
  const std::size_t size = 1 + random() % 24;
  const bool coarse = random() % 2;
  for (std::size_t i = 0; i < size; ++i) {
    Fact fact;
    fact.sheet = static_cast<std::uint32_t>(i / 8);
    fact.entry = static_cast<std::uint32_t>(i % 8);
    const bool same_address = fact.entry > 0 && random() % 4 == 0;
    if (same_address) fact.variant = static_cast<std::uint16_t>(group.back().variant + 1) & 0x7fff;
    fact.inherited = random() % 8 == 0 ? 1 : 0;
    fact.says = std::bit_cast<std::uint64_t>(coarse ? 1 + static_cast<double>(random() % 4)
                                                    : std::exp(static_cast<double>(random() % 1000) / 200));
    group.push_back(fact);
  }
  return group;
}

}  // namespace

TEST_CASE("a member of a group is judged as the definition reads") {
  std::mt19937 random(20261125);
  int judged = 0, outlying = 0;
  for (int round = 0; round < 3000; ++round) {
    const std::vector<Fact> made = random_group(random);
    const PeerGroup group(made);
    bool any_outlying = false;
    for (std::size_t i = 0; i < made.size(); ++i) {
      const auto verdict = group.judge(i);
      const auto plain = plain_verdict(made, made[i]);
      REQUIRE(verdict.has_value() == plain.has_value());
      if (!verdict) continue;
      ++judged;
      outlying += verdict->outlying;
      any_outlying = any_outlying || verdict->outlying;
      REQUIRE(verdict->others == plain->others);
      REQUIRE(verdict->median == doctest::Approx(plain->median));
      REQUIRE(verdict->ratio == doctest::Approx(plain->ratio));
      REQUIRE(verdict->outlying == plain->outlying);
    }
    if (any_outlying) REQUIRE(may_hold_outlying(made));
  }
  CHECK(judged > 10000);
  CHECK(outlying > 200);
}
