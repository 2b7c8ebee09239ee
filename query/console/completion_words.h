// SPDX-License-Identifier: GPL-2.0-or-later
// What the completions of every shell ask of a page. Internal to console.
#pragma once

#include <string>
#include <vector>

#include "query/console/program_page.h"

namespace sheaf {

// Whether a value, or a command's words, are to be files or folders.
bool wants_file(const std::string& value);

// All that the flag's value may be; none if that is not known.
const std::vector<std::string>& values_of(const ProgramPage& program, const FlagPage& flag);
// All that the command's words may be, of those that are known: units for "QUANTITY [to UNIT]".
std::vector<std::string> words_of(const ProgramPage& program, const CommandPage& command);

// In single quotes, as every shell reads them.
std::string quoted(const std::string& text);
std::string joined(const std::vector<std::string>& words, const std::string& between);

}  // namespace sheaf
