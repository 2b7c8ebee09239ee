// SPDX-License-Identifier: GPL-2.0-or-later
// The two streams. Answers go to standard output through one writer that notices when they did not
// arrive; everything else goes to standard error, with the program's name before it.
#pragma once

#include <string>
#include <string_view>

#include "compiler/cli/exit_status.h"

namespace sheafc {

enum class Colour { automatic, always, never };

// Whether a stream may be coloured: an explicit wish, else a terminal that is not dumb, and NO_COLOR empty.
bool use_colour(Colour wish, int descriptor);
bool is_terminal(int descriptor);

// Writes an answer. Call `finish_output` once at the end.
void print(std::string_view text);
// `status`, unless the output could not be written: then trouble, said on standard error. A reader that
// has gone away is a normal end.
ExitStatus finish_output(ExitStatus status);

// "sheafc: error: ..." and "sheafc: ...".
void say_error(std::string_view message);
void say(std::string_view message);
// A line below another, indented: what to do about it.
void hint(std::string_view message);

// Text from a sheet as a terminal may show it: control characters, and C1 controls, become '?'.
std::string printable(std::string_view text);

}  // namespace sheafc
