// SPDX-License-Identifier: GPL-2.0-or-later
// The prompt that `sheaf` alone opens on a terminal: a question a line, answered below while it is typed.
// Whatever it does, a command does as well.
#pragma once

#include "query/cli/command.h"

namespace sheaf {

// Until the end of input or "quit".
ExitStatus run_prompt(const Common& common);

}  // namespace sheaf
