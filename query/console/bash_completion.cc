// SPDX-License-Identifier: GPL-2.0-or-later
// Words that hold a space are offered as one: the list is split at line ends alone.
#include "query/console/completion_words.h"

namespace sheaf {
namespace {

std::vector<std::string> command_names(const ProgramPage& program) {
  std::vector<std::string> names;
  for (const CommandPage& command : program.commands) names.push_back(command.name);
  names.push_back("help");
  return names;
}

std::vector<std::string> flag_names(const std::vector<FlagPage>& flags) {
  std::vector<std::string> names;
  for (const FlagPage& flag : flags) names.insert(names.end(), flag.names.begin(), flag.names.end());
  return names;
}

std::string lines(const std::vector<std::string>& words) { return quoted(joined(words, "\n")); }

// "  find,--kind) words='fastener ...' ;;" for each flag with a value.
std::string value_cases(const ProgramPage& program, const CommandPage& command) {
  std::string cases;
  for (const FlagPage& flag : command.flags) {
    if (flag.value.empty()) continue;
    std::string names;
    for (const std::string& name : flag.names)
      names += (names.empty() ? "" : "|") + command.name + "," + name;
    const std::vector<std::string>& values = values_of(program, flag);
    const std::string act = wants_file(flag.value) ? "files=yes" : "words=" + lines(values);
    cases += "    " + names + ") " + act + "; value=yes ;;\n";
  }
  return cases;
}

std::string command_case(const ProgramPage& program, const CommandPage& command) {
  std::string act = "flags=" + lines(flag_names(command.flags));
  const auto words = words_of(program, command);
  if (!words.empty()) act += " words=" + lines(words);
  if (wants_file(command.words)) act += " files=yes";
  return "      " + command.name + ") " + act + " ;;\n";
}

}  // namespace

std::string bash_completion(const ProgramPage& program) {
  const std::string function = "_" + program.name;
  std::string text =
      "# SPDX-License-Identifier: GPL-2.0-or-later\n# bash completion for " + program.name + ", printed by " +
      program.name + " --generate complete-bash\n" + function +
      "() {\n"
      "  local word=${COMP_WORDS[COMP_CWORD]} before='' command='' at words='' flags='' files='' value=''\n"
      "  ((COMP_CWORD > 0)) && before=${COMP_WORDS[COMP_CWORD-1]}\n"
      "  for ((at = 1; at < COMP_CWORD; ++at)); do\n"
      "    case ${COMP_WORDS[at]} in -*) ;; *) command=${COMP_WORDS[at]}; break ;; esac\n"
      "  done\n"
      "  case $command,$before in\n";
  for (const CommandPage& command : program.commands) text += value_cases(program, command);
  text += "  esac\n  if [[ -z $value ]]; then\n    case $command in\n";
  for (const CommandPage& command : program.commands) text += command_case(program, command);
  text += "      help) words=" + lines(command_names(program)) + " ;;\n";
  text += "      '') words=" + lines(command_names(program)) + " flags=" + lines(flag_names(program.flags)) +
          " ;;\n";
  text +=
      "    esac\n"
      "    [[ $word == -* ]] && words=$flags files=''\n"
      "  fi\n"
      "  local IFS=$'\\n'\n"
      "  COMPREPLY=($(compgen -W \"$words\" -- \"$word\"))\n"
      "  [[ -n $files ]] && COMPREPLY+=($(compgen -f -- \"$word\")) && compopt -o filenames\n"
      "  return 0\n"
      "}\ncomplete -F " +
      function + " " + program.name + "\n";
  return text;
}

}  // namespace sheaf
