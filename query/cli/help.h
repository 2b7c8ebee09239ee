// SPDX-License-Identifier: GPL-2.0-or-later
// What `--help` and `--version` say, made from the table of commands and their flags.
#pragma once

#include <string>

#include "query/cli/command.h"

namespace sheaf {

std::string help_of(const CommandInfo& info, const CLI::App& flags);
std::string help_of_program();
std::string short_help();
std::string versions();

}  // namespace sheaf
