// SPDX-License-Identifier: GPL-2.0-or-later
// Which rings of a table a measured one may be. What is equal, what is equal within the caliper's
// uncertainty, and what is only near and therefore NOT the same are three lists, never one.
//
// Dimensions that come without names are tried in every order, since people write outside × height ×
// inside as well; the usual order (inside × outside × height) is preferred, and another one is marked.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

#include "query/quantity/result.h"
#include "query/trade/measured.h"

namespace sheaf {

// One size of the table, mm. For an O-ring, outside is inside + 2 · section and height the section.
struct SizeRow {
  double inside = 0, outside = 0, height = 0;
  std::optional<double> second_height = {};  // of a stepped ring: either may be what was measured
};

struct MatchLimits {
  double uncertainty_mm = 0.1;  // of the caliper on rubber; a difference up to this is no difference
  double near_mm = 2;           // a difference over this is not worth showing
};

// Measured minus the row's, for each dimension measured.
struct Difference {
  Role role = Role::inside;
  double measured = 0;
  double row = 0;
  double by() const { return measured - row; }
};

// In place: every row of a table is compared in up to six orders. Three dimensions at most, and the second
// height of a stepped ring.
class Differences {
 public:
  void push_back(const Difference& difference) { all_[count_++] = difference; }
  auto begin() const { return all_.begin(); }
  auto end() const { return all_.begin() + static_cast<std::ptrdiff_t>(count_); }
  const Difference& operator[](std::size_t index) const { return all_[index]; }  // index < size()
  std::size_t size() const { return count_; }

 private:
  std::array<Difference, 4> all_ = {};
  std::size_t count_ = 0;
};

struct SizeMatch {
  std::size_t row = 0;  // index into the rows given
  Differences differences;
  bool usual_order = true;  // false: it fits only if the dimensions were written in another order
};

struct SizeMatches {
  std::vector<SizeMatch> exact;   // every dimension equal
  std::vector<SizeMatch> within;  // every difference within the uncertainty, some not 0
  std::vector<SizeMatch> near;    // NOT the same: some difference is more than the uncertainty
};

// Each list is sorted by the sum of its differences, the usual order before others, then by row. Fails
// on limits that are not 0 < uncertainty < near <= 100 mm.
Result<SizeMatches> match_size(const Measured& measured, std::span<const SizeRow> rows,
                               MatchLimits limits = {});

}  // namespace sheaf
