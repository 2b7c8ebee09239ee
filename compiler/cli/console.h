// SPDX-License-Identifier: GPL-2.0-or-later
// The two streams. Answers go to standard output through one writer that notices when they did not
// arrive; everything else goes to standard error, with the program's name before it.
#pragma once

#include <string>
#include <string_view>

#include "compiler/cli/exit_status.h"
#include "compiler/source/report.h"

namespace sheafc {

enum class Colour { automatic, always, never };

// Whether a stream may be coloured: an explicit wish, else a terminal that is not dumb, and NO_COLOR empty.
bool use_colour(Colour wish, int descriptor);
bool is_terminal(int descriptor);
// How reports are laid out on a stream: coloured or not, as wide as the terminal, and capped there.
TextStyle style_for(Colour wish, int descriptor);

// Writes an answer. Call `finish_output` once at the end.
void print(std::string_view text);
// `status`, unless the output could not be written: then trouble, said on standard error. A reader that
// has gone away is a normal end.
ExitStatus finish_output(ExitStatus status);

// "1 entry", "312 entries"
std::string counted(std::size_t count, std::string_view one, std::string_view many);

// "sheafc: error: ..." and "sheafc: ...".
void say_error(std::string_view message);
void say(std::string_view message);
void say_as_is(std::string_view text);  // whole lines, already printable
// A line below another, indented: what to do about it.
void hint(std::string_view message);

}  // namespace sheafc
