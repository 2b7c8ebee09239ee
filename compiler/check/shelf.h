// SPDX-License-Identifier: GPL-2.0-or-later
// The published tables among the sheets, as query/trade takes them: what the rules judge by. A table
// that is not among the sheets of a run leaves its rows empty, and the rules that need it silent.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "compiler/link/linked_sheets.h"
#include "query/trade/band.h"
#include "query/trade/drive_fit.h"
#include "query/trade/strength.h"
#include "query/trade/thread_series.h"

namespace sheafc {

struct BearingRow {
  double bore = 0, outside = 0, width = 0;  // mm
};

class Shelf {
 public:
  explicit Shelf(const LinkedSheets& sheets);

  const std::vector<sheaf::ThreadRow>& threads() const { return threads_; }
  std::span<const sheaf::DriveRow> drives_for(double diameter_mm) const;  // the rows of that thread
  const std::vector<sheaf::PropertyClass>& classes() const { return classes_; }
  // The widest range of nut factors that any row of the tables gives.
  const std::optional<sheaf::Band>& nut_factor() const { return nut_factor_; }
  // Whether the tables have the fastener's very thread, pitch and all.
  bool lists_thread_of(const LinkedEntry& fastener) const;
  const BearingRow* bearing(std::string_view basic_designation) const;
  const LinkedEntry* o_ring(std::string_view code) const;  // the row: inside, section

  // Of its thread; a bare "M8" takes the coarse pitch of the tables.
  std::optional<sheaf::ThreadGeometry> geometry_of(const LinkedEntry& fastener) const;

 private:
  void take_thread(const LinkedEntry& row);
  void take_class(const LinkedEntry& row);
  void take_nut_factor(const LinkedEntry& row);
  void take_bearing(const LinkedEntry& row);

  std::vector<sheaf::ThreadRow> threads_;
  std::set<std::string, std::less<>> thread_keys_;
  std::unordered_map<std::string_view, sheaf::ThreadGeometry>
      geometries_;                       // of the listed threads, by their text
  std::vector<sheaf::DriveRow> drives_;  // by diameter
  std::vector<sheaf::PropertyClass> classes_;
  std::optional<sheaf::Band> nut_factor_;
  std::map<std::string, BearingRow, std::less<>> bearings_;
  std::map<std::string, const LinkedEntry*, std::less<>> o_rings_;
};

}  // namespace sheafc
