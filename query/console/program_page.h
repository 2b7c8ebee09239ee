// SPDX-License-Identifier: GPL-2.0-or-later
// What a command line is, as both programs describe theirs: manual pages and completions of shells are made
// from it, out of the same tables as the help.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace sheaf {

struct FlagPage {
  std::vector<std::string> names;    // "-o", "--output"
  std::string value;                 // "FILE"; empty if it takes none
  std::vector<std::string> choices;  // all that its value may be; empty: anything
  std::string purpose;
};

struct CommandPage {
  std::string name, words, purpose;  // "find", "WORDS…", "Answer a question in plain words"
  std::string about, examples;       // whole lines; an example is a command, two spaces or more, what it does
  std::vector<FlagPage> flags;
};

struct ProgramPage {
  std::string name, version, purpose;  // "sheaf", "0.1.0", one line
  std::string about;
  std::vector<CommandPage> commands;
  std::vector<FlagPage> flags;  // without a command
  std::vector<std::pair<std::string, std::string>> environment, files, statuses;
  std::string see_also;  // "sheafc(1)"
  // What values and words of a kind may be: "UNIT" -> every unit.
  std::map<std::string, std::vector<std::string>> values;
};

// The flags that CLI11 knows of, in their order, but for those it gives every command by itself.
std::vector<FlagPage> flags_of(const CLI::App& command);

// For man, in the macros of man(7), ASCII alone. Sheets and libraries are named as in the help.
std::string man_page(const ProgramPage& program);

// Each completes commands, their flags, the values that are known, and files where a file is wanted.
std::string bash_completion(const ProgramPage& program);
std::string zsh_completion(const ProgramPage& program);
std::string fish_completion(const ProgramPage& program);

// What `--generate WHAT` prints: man, complete-bash, complete-zsh or complete-fish; empty for anything else.
std::string generated(const ProgramPage& program, const std::string& what);

}  // namespace sheaf
