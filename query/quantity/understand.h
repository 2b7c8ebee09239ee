// SPDX-License-Identifier: GPL-2.0-or-later
// What a line typed at `sheaf convert` asks for. It is split into a statement and the units wanted, at the
// last word "to", "in", "into", "as" or "=" if what follows is a unit, else behind the longest figure that
// the line begins with.
#pragma once

#include "query/quantity/figure.h"

namespace sheaf {

using Units = std::vector<const Unit*>;

struct Understood {
  std::vector<Statement> sources;  // every reading of what was typed
  Units units;                     // every reading of the unit wanted; empty if none was named
};

Result<Understood> understand(std::string_view line, std::optional<Dimension> dimension);

}  // namespace sheaf
