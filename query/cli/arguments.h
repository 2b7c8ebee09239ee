// SPDX-License-Identifier: GPL-2.0-or-later
// The words of a command line parted from its flags. A word is never taken for a command, a list or a
// flag's value: "find about", "[22 nm]" and "-40 C" are words, and flags may stand anywhere.
#pragma once

#include <optional>

#include "query/cli/command.h"

namespace sheaf {

// Runs the command that the arguments name. Says what is wrong with them, and what was probably meant.
ExitStatus run_arguments(const Words& arguments);

}  // namespace sheaf
