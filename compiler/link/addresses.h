// SPDX-License-Identifier: GPL-2.0-or-later
// Whether every former address leads to one entry alone. It takes all sheets of a run, one after the other,
// and keeps little of each, so that they need not be in memory together.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "compiler/link/linked_sheets.h"

namespace sheafc {

class Addresses {
 public:
  // The run's own sheets in order; borrowed ones at any time, and as often as wanted.
  void add(const LinkedSheet& sheet);
  // Reports each former address that another entry has or had before.
  void report_taken(Diagnostics& sink);

 private:
  struct Present {
    std::uint64_t hash = 0;  // of the address
    std::uint32_t file = 0;  // its place in files_
    std::int32_t line = 0, column = 0, length = 0;
  };
  struct Former {
    std::string address, of;  // the entry that had it, by its present address
    Span stated;
    Span entry;
    bool borrowed = false;
  };
  struct Holder {
    std::string address;
    Span where;
  };
  const Present* present(const std::string& address) const;

  std::vector<std::string_view> files_;
  std::vector<Present> present_;  // report_taken sorts it
  std::vector<Former> former_;    // and this
};

void report_taken_addresses(const LinkedSheets& sheets, Diagnostics& sink);

}  // namespace sheafc
