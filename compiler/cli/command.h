// SPDX-License-Identifier: GPL-2.0-or-later
// The commands of sheafc. Each is declared in a file of its own: it adds its flags to the command line
// and leaves behind what to run once they are read.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/cli/exit_status.h"
#include "query/quantity/result.h"

namespace CLI {
class App;
}

namespace sheafc {

// What main runs: set by the command that was chosen.
using Action = std::function<ExitStatus()>;

void add_build(CLI::App& program, Action& action);
void add_check(CLI::App& program, Action& action);
void add_show(CLI::App& program, Action& action);
void add_diff(CLI::App& program, Action& action);
void add_coverage(CLI::App& program, Action& action);
void add_explain(CLI::App& program, Action& action);
void add_format(CLI::App& program, Action& action);
void add_new(CLI::App& program, Action& action);
void add_schema(CLI::App& program, Action& action);

}  // namespace sheafc
