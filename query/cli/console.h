// SPDX-License-Identifier: GPL-2.0-or-later
// The two streams. Answers go to standard output through one writer that notices when they did not
// arrive; everything else goes to standard error, with the program's name before it.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "query/answer/page.h"
#include "query/cli/exit_status.h"

namespace sheaf {

enum class Colour { automatic, always, never };

bool output_is_terminal();
bool input_is_terminal();

// Width of the terminal, else 80; colour by the wish, NO_COLOR, CLICOLOR_FORCE and TERM; plain ASCII for
// a terminal whose locale says that it is not UTF-8.
TextStyle output_style(Colour wish);

void print(std::string_view text);
void flush_output();

// Ends the output: `status`, unless it could not be written, which is then said. A reader that has gone
// away is a normal end.
ExitStatus finish_output(ExitStatus status);

// "sheaf: error: ...", and below it, indented, what to do about it.
void say_error(std::string_view message, std::string_view hint = {});
// "sheaf: ..."
void say(std::string_view message);

// All of standard input, up to a limit; nothing if it could not be read, which is said.
std::optional<std::string> read_input();

}  // namespace sheaf
