// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/size_match.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

#include "query/trade/band.h"

namespace sheaf {
namespace {

constexpr double equal_mm = 1e-6;  // exact sizes differ by the rounding of inches at most

enum class Likeness { exact, within, near, none };

// Of a stepped ring, one measured height is held against the nearer of its two.
double dimension(const SizeRow& row, Role role, double measured) {
  if (role == Role::inside) return row.inside;
  if (role == Role::outside) return row.outside;
  const bool second =
      row.second_height && std::abs(measured - *row.second_height) < std::abs(measured - row.height);
  return second ? *row.second_height : row.height;
}

double sum_of(const SizeMatch& match) {
  double sum = 0;
  for (const Difference& difference : match.differences) sum += std::abs(difference.by());
  return sum;
}

Likeness likeness(const SizeMatch& match, const MatchLimits& limits) {
  double largest = 0;
  for (const Difference& difference : match.differences)
    largest = std::max(largest, std::abs(difference.by()));
  if (largest <= equal_mm) return Likeness::exact;
  if (largest <= limits.uncertainty_mm + equal_mm) return Likeness::within;
  return largest <= limits.near_mm + equal_mm ? Likeness::near : Likeness::none;
}

// Every way to give the measured dimensions roles: the one they came with, or all of them, the usual
// one first.
std::vector<std::vector<Role>> readings_of(const Measured& measured) {
  if (!measured.roles.empty()) return {measured.roles};
  std::array<Role, 3> order = {Role::inside, Role::outside, Role::height};
  std::vector<std::vector<Role>> readings;
  do {
    std::vector<Role> reading(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(measured.mm.size()));
    if (std::find(readings.begin(), readings.end(), reading) == readings.end())
      readings.push_back(std::move(reading));
  } while (std::next_permutation(order.begin(), order.end()));
  return readings;
}

// Two measured heights are both compared, the lower with the lower, in whatever order they came.
void compare_both_heights(double first, double second, const SizeRow& row, SizeMatch& match) {
  const auto measured = std::minmax(first, second);
  const double other = row.second_height.value_or(row.height);
  const auto known = std::minmax(row.height, other);
  match.differences.push_back({Role::height, measured.first, known.first});
  match.differences.push_back({Role::height, measured.second, known.second});
}

SizeMatch compared(const Measured& measured, const std::vector<Role>& reading, const SizeRow& row,
                   std::size_t index) {
  SizeMatch match;
  match.row = index;
  for (std::size_t i = 0; i < reading.size(); ++i) {
    const double mm = measured.mm[i];
    if (reading[i] == Role::height && measured.second_height) {
      compare_both_heights(mm, *measured.second_height, row, match);
    } else {
      match.differences.push_back({reading[i], mm, dimension(row, reading[i], mm)});
    }
  }
  return match;
}

// A lone dimension has no order to keep or break.
bool is_usual(const Measured& measured, std::size_t reading) {
  return reading == 0 || measured.mm.size() == 1;
}

// The reading under which the row is most like what was measured; a tie goes to the usual one. Near
// counts in the usual order alone: in six orders, almost everything is near something.
SizeMatch best_reading(const Measured& measured, const std::vector<std::vector<Role>>& readings,
                       const SizeRow& row, std::size_t index, const MatchLimits& limits) {
  SizeMatch best = compared(measured, readings.front(), row, index);
  for (std::size_t i = 1; i < readings.size(); ++i) {
    SizeMatch other = compared(measured, readings[i], row, index);
    other.usual_order = is_usual(measured, i);
    const bool may_count = other.usual_order || likeness(other, limits) <= Likeness::within;
    const auto rank = [&](const SizeMatch& match) {
      return std::pair(likeness(match, limits), sum_of(match));
    };
    if (may_count && rank(other) < rank(best)) best = std::move(other);
  }
  return best;
}

void sort(std::vector<SizeMatch>& matches) {
  std::sort(matches.begin(), matches.end(), [](const SizeMatch& left, const SizeMatch& right) {
    return std::tuple(!left.usual_order, sum_of(left), left.row) <
           std::tuple(!right.usual_order, sum_of(right), right.row);
  });
}

}  // namespace

Result<SizeMatches> match_size(const Measured& measured, std::span<const SizeRow> rows, MatchLimits limits) {
  if (auto failure = outside_range({{"near", limits.near_mm, {0, 100}, "mm"},
                                    {"uncertainty", limits.uncertainty_mm, {1e-6, limits.near_mm}, "mm"}})) {
    return *failure;
  }
  const bool named_all = measured.roles.empty() || measured.roles.size() == measured.mm.size();
  if (measured.mm.empty() || measured.mm.size() > 3 || !named_all)
    return Failure{"one to three dimensions are compared"};
  const auto readings = readings_of(measured);
  SizeMatches matches;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    SizeMatch match = best_reading(measured, readings, rows[i], i, limits);
    switch (likeness(match, limits)) {
      case Likeness::exact:
        matches.exact.push_back(std::move(match));
        break;
      case Likeness::within:
        matches.within.push_back(std::move(match));
        break;
      case Likeness::near:
        matches.near.push_back(std::move(match));
        break;
      case Likeness::none:
        break;
    }
  }
  sort(matches.exact);
  sort(matches.within);
  sort(matches.near);
  return matches;
}

}  // namespace sheaf
