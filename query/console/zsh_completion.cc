// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/console/completion_words.h"

namespace sheaf {
namespace {

// Inside the specifications of _arguments, brackets and colons mean something.
std::string specified(const std::string& text) {
  std::string out;
  for (const char sign : text) {
    if (sign == '[' || sign == ']' || sign == ':' || sign == '\\') out += '\\';
    out += sign;
  }
  return out;
}

std::string words_action(const std::vector<std::string>& words) {
  std::string action = "(";
  for (const std::string& word : words) {
    if (action.size() > 1) action += ' ';
    for (const char sign : word) {
      if (std::string(" ()\\\"'`$|&;<>*?[]:").find(sign) != std::string::npos) action += '\\';
      action += sign;
    }
  }
  return action + ")";
}

std::string action_of(const ProgramPage& program, const FlagPage& flag) {
  if (wants_file(flag.value)) return "_files";
  const std::vector<std::string>& values = values_of(program, flag);
  return values.empty() ? " " : words_action(values);
}

std::string flag_lines(const ProgramPage& program, const std::vector<FlagPage>& flags) {
  std::string lines;
  for (const FlagPage& flag : flags) {
    for (const std::string& name : flag.names) {
      std::string line = "*" + name + "[" + specified(flag.purpose) + "]";
      if (!flag.value.empty()) line += ":" + specified(flag.value) + ":" + action_of(program, flag);
      lines += "        " + quoted(line) + " \\\n";
    }
  }
  return lines;
}

std::string command_case(const ProgramPage& program, const CommandPage& command) {
  const auto words = words_of(program, command);
  const std::string action = wants_file(command.words) ? "_files" : words.empty() ? " " : words_action(words);
  return "    " + command.name + ")\n      _arguments \\\n" + flag_lines(program, command.flags) +
         "        " +
         quoted("*:" + specified(command.words.empty() ? "none" : command.words) + ":" + action) + " ;;\n";
}

}  // namespace

std::string zsh_completion(const ProgramPage& program) {
  std::string text = "#compdef " + program.name +
                     "\n# SPDX-License-Identifier: GPL-2.0-or-later\n# zsh completion for " + program.name +
                     ", printed by " + program.name + " --generate complete-zsh\n_" + program.name +
                     "() {\n  local -a commands=(\n";
  for (const CommandPage& command : program.commands)
    text += "    " + quoted(specified(command.name) + ":" + command.purpose) + "\n";
  text += "  )\n  if ((CURRENT == 2)); then\n    _arguments \\\n" + flag_lines(program, program.flags) +
          "        '1:command:->command' && return\n    _describe command commands\n    return\n  fi\n"
          "  local command=$words[2]\n  shift words\n  ((CURRENT--))\n  case $command in\n";
  for (const CommandPage& command : program.commands) text += command_case(program, command);
  return text + "  esac\n}\n_" + program.name + " \"$@\"\n";
}

}  // namespace sheaf
