// SPDX-License-Identifier: GPL-2.0-or-later
// The workshop's crib: its torque wrenches, its adapters and the units it reads best, as its sheet has them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/answer/value.h"
#include "query/library/library.h"
#include "query/trade/torque_wrench.h"

namespace sheaf {

struct CribWrench {
  std::string address, name;
  TorqueWrench scale;              // range, step, unit and accuracy
  std::optional<Quantity> length;  // from the middle of the grip to the square
  std::string drive;               // "square 1/2 in"; empty if not stated
  std::string calibration_due;     // 2027-03-01; empty if not stated
  bool shows = false;              // an indicating wrench shows the torque; a setting one is set to it
};

struct CribAdapter {
  std::string address, name, drive;
  Quantity offset;  // from the wrench's square to the fastener
};

struct Crib {
  std::string sheet, shop, library;
  PreferredUnits units;             // of torque, pressure and volume
  std::optional<Number> tolerance;  // per cent: the shop's own, for figures without one
  std::vector<CribWrench> wrenches;
  std::vector<CribAdapter> adapters;

  // By its address, or by the part of it behind the sheet.
  const CribAdapter* adapter_named(std::string_view name) const;
};

// The crib of the first library that has one; none if none has. Fails on a damaged library, and names the
// wrench or adapter that cannot be read.
Result<std::optional<Crib>> read_crib(const std::vector<Library*>& libraries);

// Units as a crib names them, for any other asker of answers.
double millimetres(const Quantity& length);

}  // namespace sheaf
