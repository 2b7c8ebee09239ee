// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/viscosity_index.h"

#include <algorithm>
#include <cmath>

#include "query/trade/band.h"

namespace sheaf {
namespace {

constexpr double end_of_table = 70;  // mm²/s; above it the standard gives equations

Result<IndexRow> interpolated(double y, std::span<const IndexRow> table) {
  const auto above = std::lower_bound(table.begin(), table.end(), y, [](const IndexRow& row, double value) {
    return row.viscosity_100 < value;
  });
  if (above != table.end() && above->viscosity_100 == y) return *above;
  if (above == table.end() || above == table.begin()) {
    return Failure{"the table of L and H does not reach " + brief(y) + " mm²/s"};
  }
  const IndexRow& below = *(above - 1);
  const double share = (y - below.viscosity_100) / (above->viscosity_100 - below.viscosity_100);
  return IndexRow{y, below.l + share * (above->l - below.l), below.h + share * (above->h - below.h)};
}

Result<IndexRow> l_and_h(double y, std::span<const IndexRow> table) {
  if (y <= end_of_table) return interpolated(y, table);
  return IndexRow{y, 0.8353 * y * y + 14.67 * y - 216, 0.1684 * y * y + 11.85 * y - 97};
}

}  // namespace

Result<ViscosityIndex> viscosity_index(double viscosity_40, double viscosity_100,
                                       std::span<const IndexRow> table) {
  if (auto failure = outside_range({{"viscosity at 100 °C", viscosity_100, {2, 1e4}, "mm²/s"},
                                    {"viscosity at 40 °C", viscosity_40, {2, 2e7}, "mm²/s"}})) {
    return *failure;
  }
  if (viscosity_40 <= viscosity_100)
    return Failure{"an oil is thinner at 100 °C than at 40 °C; these say otherwise"};
  const auto row = l_and_h(viscosity_100, table);
  if (!row) return row.failure();
  ViscosityIndex result;
  result.l = row->l;
  result.h = row->h;
  if (viscosity_40 >= row->h) {
    result.raw = (row->l - viscosity_40) / (row->l - row->h) * 100;
  } else {
    result.procedure = 'B';
    const double n = std::log10(row->h / viscosity_40) / std::log10(viscosity_100);
    result.raw = (std::pow(10, n) - 1) / 0.00715 + 100;
  }
  if (auto failure = outside_range({{"viscosity index", result.raw, {-1000, 5000}, ""}})) return *failure;
  result.index = static_cast<int>(std::lround(result.raw));
  return result;
}

}  // namespace sheaf
