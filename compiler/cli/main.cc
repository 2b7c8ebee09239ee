// SPDX-License-Identifier: GPL-2.0-or-later
// The program sheafc: flags and wiring. Each command stands in its own file.
#include <CLI/CLI.hpp>
#include <csignal>
#include <exception>

#include "compiler/cli/command.h"
#include "compiler/cli/console.h"
#include "compiler/cli/generate.h"
#include "compiler/cli/version.h"
#include "compiler/sheet/suggestion.h"
#include "query/library/near_word.h"

namespace sheafc {
namespace {

constexpr const char* footer =
    "Examples:\n"
    "  sheafc new fork my-fork                        start a sheet\n"
    "  sheafc check specs-yaml                        what is wrong, and where\n"
    "  sheafc build specs-yaml -o orrindale.sheaf     compile; nothing is written while there are errors\n"
    "  sheafc explain unreadable-figure               what a rule wants, with examples\n"
    "\n"
    "Environment: NO_COLOR, CLICOLOR_FORCE and TERM decide on colour; SOURCE_DATE_EPOCH stands for today.\n"
    "Exit status: 0 done, 1 the sheets have errors, 2 wrong usage or the world failed, 130 interrupted.\n"
    "The sheet language: specs-yaml/README.md. sheafc COMMAND --help has each command's flags.";

std::vector<std::string> names_of(const CLI::App& program) {
  std::vector<std::string> names;
  for (const CLI::App* command : program.get_subcommands({})) names.push_back(command->get_name());
  return names;
}

// A suggestion among words that are owned elsewhere for the length of the call.
std::string suggestion(std::string_view word, const std::vector<std::string>& candidates) {
  const std::vector<std::string_view> views(candidates.begin(), candidates.end());
  return std::string(sheaf::near_word(word, views));
}

ExitStatus misused(const std::string& message, const std::string& near, const std::string& command) {
  say_error(message);
  if (!near.empty())
    hint("did you mean '" + near + "'?");
  else
    hint("see sheafc " + (command.empty() ? "" : command + " ") + "--help");
  return ExitStatus::trouble;
}

std::vector<std::string> flags_of(const CLI::App& command) {
  std::vector<std::string> flags;
  for (const CLI::Option* option : command.get_options()) {
    for (const std::string& name : option->get_lnames()) flags.push_back("--" + name);
  }
  return flags;
}

// CLI11's own messages lack the program's name and the near word.
ExitStatus explain_usage(const CLI::App& program, const CLI::ParseError& error) {
  const auto chosen = program.get_subcommands();
  const CLI::App& command = chosen.empty() ? program : *chosen.front();
  const std::string name = chosen.empty() ? "" : command.get_name();
  for (const std::string& extra : command.remaining(true)) {
    if (extra.size() < 2 || extra.front() != '-')
      return misused("'" + extra + "' is one word too many", "", name);
    const std::string flag = extra.substr(0, extra.find('='));
    return misused("unknown flag '" + flag + "'", suggestion(flag, flags_of(command)), name);
  }
  return misused(error.what(), "", name);
}

// The first word that is no flag is the command; it must be one of ours.
bool names_command(const CLI::App& program, int count, char** words, std::string& unknown) {
  const auto names = names_of(program);
  for (int i = 1; i < count; ++i) {
    const std::string word = words[i];
    if (word == "--generate") return true;  // the next word is its value
    if (word.starts_with('-')) continue;
    unknown = std::find(names.begin(), names.end(), word) == names.end() ? word : "";
    return unknown.empty();
  }
  return true;
}

ExitStatus run(int count, char** words) {
  CLI::App program("sheafc proves spec sheets and compiles them into one library file for sheaf.", "sheafc");
  program.set_version_flag("--version", versions);
  program.require_subcommand(0, 1);
  program.get_formatter()->column_width(34);
  Action action;
  add_build(program, action);
  add_check(program, action);
  add_show(program, action);
  add_explain(program, action);
  add_format(program, action);
  add_new(program, action);
  add_diff(program, action);
  add_coverage(program, action);
  add_schema(program, action);

  std::string what;
  program.add_option("--generate", what, "Print the manual page, or the completion for a shell")
      ->type_name("WHAT")
      ->check(CLI::IsMember({"man", "complete-bash", "complete-zsh", "complete-fish"}));
  program.footer(footer);  // after the commands, which would have copied it

  std::string unknown;
  if (count > 2 && std::string_view(words[1]) == "help") {  // "sheafc help build"
    static char flag[] = "--help";
    words[1] = flag;
    std::swap(words[1], words[2]);
  }
  if (!names_command(program, count, words, unknown)) {
    return misused("unknown command '" + unknown + "'", suggestion(unknown, names_of(program)), "");
  }
  try {
    program.parse(count, words);
  } catch (const CLI::CallForHelp&) {
    const auto chosen = program.get_subcommands();
    print(chosen.empty() ? program.help() : chosen.front()->help(program.get_name()));
    return ExitStatus::done;
  } catch (const CLI::CallForVersion& version) {
    print(std::string(version.what()) + "\n");
    return ExitStatus::done;
  } catch (const CLI::ParseError& error) {
    return explain_usage(program, error);
  }
  if (!what.empty()) {
    print(generate(program, what));
    return ExitStatus::done;
  }
  if (action) return action();
  const auto names = names_of(program);
  say_error("no command is given");
  hint(any_of(std::vector<std::string_view>(names.begin(), names.end())) + "; see sheafc --help");
  return ExitStatus::trouble;
}

}  // namespace
}  // namespace sheafc

int main(int count, char** words) {
  std::signal(SIGPIPE, SIG_IGN);  // a reader that has gone away is noticed when writing
  std::signal(SIGXFSZ, SIG_IGN);  // and so is a limit of file sizes
  const auto status = sheafc::finish_output(sheafc::run(count, words));
  return static_cast<int>(status);
}
