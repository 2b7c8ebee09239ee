// SPDX-License-Identifier: GPL-2.0-or-later
// Which other sheets a sheet speaks of.
#pragma once

#include <string>
#include <vector>

#include "compiler/sheet/sheet.h"

namespace sheafc {

// Names of sheets, ascending, each once.
struct References {
  std::vector<std::string>
      bases;  // whose content it takes over: its base, and those with entries that its own are like
  std::vector<std::string> all;  // these, and those with entries that it names
};

References references_of(const Sheet& sheet);

}  // namespace sheafc
