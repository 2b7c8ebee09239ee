// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/cli/arguments.h"

#include <CLI/CLI.hpp>
#include <algorithm>

#include "query/cli/generate.h"
#include "query/cli/help.h"
#include "query/cli/prompt.h"
#include "query/library/near_word.h"

namespace sheaf {
namespace {

bool is_digit(char sign) { return sign >= '0' && sign <= '9'; }

// "-40", "-.5" and "-" are words; "--" ends the flags.
bool is_flag(const std::string& argument) {
  return argument.size() > 1 && argument[0] == '-' && !is_digit(argument[1]) && argument[1] != '.';
}

bool takes_value(const CLI::App& flags, const std::string& flag) {
  if (flag.find('=') != std::string::npos) return false;
  const CLI::Option* option = flags.get_option_no_throw(flag);
  return option && option->get_items_expected_max() > 0;
}

struct Parted {
  Words words, flags;
};

Parted part(const CLI::App& app, const Words& arguments) {
  Parted parted;
  for (std::size_t i = 0; i < arguments.size(); ++i) {
    const std::string& argument = arguments[i];
    if (argument == "--") {
      parted.words.insert(parted.words.end(), arguments.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                          arguments.end());
      break;
    }
    if (!is_flag(argument)) {
      parted.words.push_back(argument);
      continue;
    }
    parted.flags.push_back(argument);
    if (takes_value(app, argument) && i + 1 < arguments.size()) parted.flags.push_back(arguments[++i]);
  }
  return parted;
}

std::vector<std::string> flags_of(const CLI::App& app) {
  std::vector<std::string> names = {"--help"};
  for (const CLI::Option* option : app.get_options())
    for (const auto& name : option->get_lnames()) names.push_back("--" + name);
  return names;
}

std::string hint_for(std::string_view near, const std::string& help) {
  return near.empty() ? "see " + help : "did you mean '" + std::string(near) + "'?";
}

ExitStatus misused(const CLI::App& app, const CommandInfo& info, const CLI::ParseError& error) {
  const std::string help = "sheaf " + std::string(info.name) + " --help";
  for (const auto& extra : app.remaining()) {
    const std::string flag = extra.substr(0, extra.find('='));
    const auto names = flags_of(app);
    const std::vector<std::string_view> views(names.begin(), names.end());
    say_error("unknown flag '" + flag + "'", hint_for(near_word(flag, views), help));
    return ExitStatus::trouble;
  }
  say_error(error.what(), "see " + help);
  return ExitStatus::trouble;
}

ExitStatus run_command(const CommandInfo& info, const Words& arguments) {
  const auto command = info.make();
  if (std::ranges::none_of(arguments, is_flag)) return command->run(arguments);  // as most are asked
  CLI::App app;
  app.set_help_flag();
  bool help = false;
  app.add_flag("-h,--help", help, "Say this");
  Flags declared(app);
  command->declare(declared);
  auto [words, flags] = part(app, arguments);
  try {
    std::ranges::reverse(flags);  // as CLI11 wants them
    app.parse(flags);
  } catch (const CLI::ParseError& error) {
    if (!help) return misused(app, info, error);
  }
  if (help) {
    print(help_of(info, app));
    return ExitStatus::done;
  }
  return command->run(words);
}

// Flags may stand before the command: it is the first word that no flag before it takes as its value.
std::size_t command_at(const Words& arguments) {
  if (!arguments.empty() && !is_flag(arguments.front())) return 0;  // as most are typed
  CLI::App app;
  Flags flags(app);
  Common common;
  declare_library(flags, common);
  declare_output(flags, common);
  std::string generated;
  app.add_option("--generate", generated);
  for (std::size_t i = 0; i < arguments.size(); ++i) {
    if (!is_flag(arguments[i])) return i;
    if (takes_value(app, arguments[i])) ++i;
  }
  return arguments.size();
}

ExitStatus unknown_command(const std::string& name) {
  std::vector<std::string_view> names;
  for (const auto& info : all_commands()) names.push_back(info.name);
  say_error("unknown command '" + name + "'", hint_for(near_word(name, names), "sheaf --help"));
  return ExitStatus::trouble;
}

bool holds(const Words& arguments, std::initializer_list<std::string_view> any) {
  return std::ranges::any_of(
      arguments, [&](const std::string& each) { return std::ranges::find(any, each) != any.end(); });
}

// `sheaf --library FILE` alone: flags without a command.
bool read_flags_alone(const Words& arguments, Common& common, bool& prompts) {
  CLI::App app;
  app.set_help_flag();
  Flags flags(app);
  declare_library(flags, common);
  declare_output(flags, common);
  app.add_flag("!--no-input", prompts, "Never open the prompt");
  try {
    app.parse(Words(arguments.rbegin(), arguments.rend()));
    return true;
  } catch (const CLI::ParseError&) {
    const std::vector<std::string> names = flags_of(app);
    std::vector<std::string_view> known(names.begin(), names.end());
    known.push_back("--version");
    say_error("unknown flag '" + arguments.front() + "', and no command is given",
              hint_for(near_word(arguments.front(), known), "sheaf --help"));
    return false;
  }
}

ExitStatus print_generated(const Words& arguments) {
  const std::string text = arguments.size() == 2 ? generate(arguments[1]) : "";
  print(text);
  if (!text.empty()) return ExitStatus::done;
  say_error("--generate wants one of man, complete-bash, complete-zsh, complete-fish");
  return ExitStatus::trouble;
}

ExitStatus run_without_command(const Words& arguments) {
  if (holds(arguments, {"--version"})) {
    print(versions());
    return ExitStatus::done;
  }
  if (!arguments.empty() && arguments.front() == "--generate") return print_generated(arguments);
  if (holds(arguments, {"-h", "--help"})) {
    print(help_of_program());
    return ExitStatus::done;
  }
  Common common;
  bool prompts = true;
  if (!read_flags_alone(arguments, common, prompts)) return ExitStatus::trouble;
  if (prompts && input_is_terminal() && output_is_terminal()) return run_prompt(common);
  print(short_help());
  return ExitStatus::done;
}

}  // namespace

ExitStatus run_arguments(const Words& arguments) {
  const std::size_t at = command_at(arguments);
  if (at == arguments.size()) return run_without_command(arguments);
  Words rest = arguments;
  rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(at));
  std::string name = arguments[at];
  if (name == "help") {
    if (rest.empty()) return run_without_command({"--help"});
    name = rest.front();
    rest = {"--help"};
  }
  const CommandInfo* info = command_named(name);
  return info ? run_command(*info, rest) : unknown_command(name);
}

}  // namespace sheaf
