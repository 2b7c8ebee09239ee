// SPDX-License-Identifier: GPL-2.0-or-later
// Flags that several commands have, so that each means the same everywhere.
#pragma once

#include "compiler/cli/compilation.h"
#include "compiler/cli/console.h"

namespace CLI {
class App;
}

namespace sheafc {

// --color auto|always|never, and --no-color. `colour` must live as long as the command.
void add_colour_flag(CLI::App& command, Colour& colour);

// --with LIBRARY, as often as wanted.
void add_with_flag(CLI::App& command, CompileRequest& request);

}  // namespace sheafc
