// SPDX-License-Identifier: GPL-2.0-or-later
// The commands of sheaf, one a file. The table says what each is for; help, the manual page and the
// completions are made from it.
#pragma once

#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "query/cli/console.h"
#include "query/cli/flags.h"

namespace sheaf {

using Words = std::vector<std::string>;

class Command {
 public:
  virtual ~Command() = default;
  virtual void declare(Flags& flags) = 0;
  virtual ExitStatus run(const Words& words) = 0;
};

struct CommandInfo {
  std::string_view name;
  std::string_view words;     // what follows it: "WORDS…"
  std::string_view purpose;   // one line
  std::string_view about;     // what else a person must know, in whole lines
  std::string_view examples;  // lines: a command, two spaces, what it does
  std::unique_ptr<Command> (*make)();
};

std::span<const CommandInfo> all_commands();
const CommandInfo* command_named(std::string_view name);

// Flags that several commands have, so that each means the same everywhere.
struct Common {
  std::vector<std::string> libraries;
  bool json = false;
  Colour colour = Colour::automatic;
};
void declare_library(Flags& flags, Common& common);  // --library FILE, again for several
void declare_output(Flags& flags, Common& common);   // --json, --color, --no-color

std::unique_ptr<Command> make_about();
std::unique_ptr<Command> make_card();
std::unique_ptr<Command> make_convert();
std::unique_ptr<Command> make_dump();
std::unique_ptr<Command> make_find();
std::unique_ptr<Command> make_kit();
std::unique_ptr<Command> make_reckon();
std::unique_ptr<Command> make_match();
std::unique_ptr<Command> make_serve();
std::unique_ptr<Command> make_show();
std::unique_ptr<Command> make_wrench();

}  // namespace sheaf
