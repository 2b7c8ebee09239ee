// SPDX-License-Identifier: GPL-2.0-or-later
// What goes without saying where an entry stands. Internal to search.
#pragma once

#include <optional>
#include <set>
#include <string>

#include "query/library/record.h"

namespace sheaf {

// The words of its sheet's assembly, its machines, its maker. Most names do not ask for them, so they are
// gathered when the first does.
class Context {
 public:
  Context(const EntryRecord& entry, const SheetRecord& sheet) : entry_(entry), sheet_(sheet) {}

  bool holds(const std::string& stem);

 private:
  const EntryRecord& entry_;
  const SheetRecord& sheet_;
  std::optional<std::set<std::string>> stems_;
};

}  // namespace sheaf
