// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/console/completion_words.h"

namespace sheaf {
namespace {

// fish knows two escapes in single quotes.
std::string fish_quoted(const std::string& text) {
  std::string out = "'";
  for (const char sign : text) {
    if (sign == '\'' || sign == '\\') out += '\\';
    out += sign;
  }
  return out + "'";
}

std::string flag_line(const ProgramPage& program, const std::string& condition, const FlagPage& flag) {
  std::string line = "complete -c " + program.name + " -n " + fish_quoted(condition);
  for (const std::string& name : flag.names)
    line += name.starts_with("--") ? " -l " + name.substr(2) : " -s " + name.substr(1);
  if (!flag.value.empty()) {
    const std::vector<std::string>& values = values_of(program, flag);
    line += wants_file(flag.value) ? " -r -F" : " -x";
    if (!values.empty()) line += " -a " + fish_quoted(joined(values, " "));
  }
  return line + " -d " + fish_quoted(flag.purpose) + "\n";
}

}  // namespace

std::string fish_completion(const ProgramPage& program) {
  std::string text = "# SPDX-License-Identifier: GPL-2.0-or-later\n# fish completion for " + program.name +
                     ", printed by " + program.name + " --generate complete-fish\ncomplete -c " +
                     program.name + " -f\n";
  for (const FlagPage& flag : program.flags) text += flag_line(program, "__fish_use_subcommand", flag);
  for (const CommandPage& command : program.commands) {
    text += "complete -c " + program.name + " -n __fish_use_subcommand -a " + command.name + " -d " +
            fish_quoted(command.purpose) + "\n";
    const std::string seen = "__fish_seen_subcommand_from " + command.name;
    for (const FlagPage& flag : command.flags) text += flag_line(program, seen, flag);
    if (wants_file(command.words))
      text += "complete -c " + program.name + " -n " + fish_quoted(seen) + " -F\n";
    for (const std::string& word : words_of(program, command))
      text += "complete -c " + program.name + " -n " + fish_quoted(seen) + " -a " +
              fish_quoted(fish_quoted(word)) + "\n";
  }
  return text;
}

}  // namespace sheaf
