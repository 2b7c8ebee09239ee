// SPDX-License-Identifier: GPL-2.0-or-later
// Diagnostics as people and programs read them.
#pragma once

#include <string>

#include "compiler/cli/console.h"
#include "compiler/sheet/workspace.h"
#include "compiler/source/diagnostics.h"

namespace sheafc {

// file:line:column: error: message [rule], with the source line and a caret under the characters meant.
// At most `cap` reports are shown (0: all); notes go before warnings, warnings before errors, and what
// was left out is counted.
std::string report_text(const Diagnostics& diagnostics, const Workspace& workspace, bool coloured, std::size_t cap);

// One JSON object a line: file, line, column, length, severity, rule, message, notes.
std::string report_json(const Diagnostics& diagnostics);

// So many reports are shown on a terminal.
inline constexpr std::size_t most_on_terminal = 50;

// "3 errors, 1 warning"
std::string tally(const Diagnostics& diagnostics);

}  // namespace sheafc
