// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/cli/help.h"

#include <CLI/CLI.hpp>

#include "query/answer/text.h"
#include "query/console/program_page.h"
#include "query/library/library.h"

namespace sheaf {
namespace {

constexpr std::string_view one_line =
    "sheaf answers from the workshop's spec sheets: how tight, which socket, how much of which oil.\n";
constexpr std::string_view ending =
    "Library: --library FILE, else SHEAF_LIBRARY, else *.sheaf beside the program, else sheaf/ in\n"
    "$XDG_DATA_HOME and $XDG_DATA_DIRS.\n"
    "Exit status: 0 found or done, 1 nothing found, 2 wrong usage or the world failed.\n";

std::string flag_names(const FlagPage& flag) {
  std::string names;
  for (const std::string& name : flag.names) names += (names.empty() ? "" : ", ") + name;
  return flag.value.empty() ? names : names + " " + flag.value;
}

std::string flag_lines(const CLI::App& flags) {
  std::string lines;
  for (const FlagPage& flag : flags_of(flags))
    lines += "  " + padded(flag_names(flag), 20) + "  " + flag.purpose + "\n";
  return lines;
}

std::string indented(std::string_view lines) {
  std::string text;
  while (!lines.empty()) {
    const auto end = std::min(lines.find('\n'), lines.size());
    text += "  " + std::string(lines.substr(0, end)) + "\n";
    lines.remove_prefix(std::min(end + 1, lines.size()));
  }
  return text;
}

std::string command_lines() {
  std::string lines;
  for (const auto& info : all_commands())
    lines += "  " + padded(std::string(info.name) + " " + std::string(info.words), 28) + "  " +
             std::string(info.purpose) + "\n";
  return lines;
}

}  // namespace

std::string help_of(const CommandInfo& info, const CLI::App& flags) {
  std::string text = std::string(info.purpose) + ".\n\nUsage: sheaf " + std::string(info.name);
  if (!info.words.empty()) text += " " + std::string(info.words);
  text += " [FLAGS]\n";
  if (!info.about.empty()) text += "\n" + std::string(info.about) + "\n";
  text += "\nExamples:\n" + indented(info.examples);
  text += "\nFlags:\n" + flag_lines(flags);
  return text + "\n" + std::string(ending);
}

std::string help_of_program() {
  return std::string(one_line) + "\nUsage: sheaf COMMAND [WORDS…] [FLAGS]\n\nCommands:\n" + command_lines() +
         "\nsheaf COMMAND --help says more of each; sheaf --version names the versions.\n\n" +
         std::string(ending);
}

std::string short_help() {
  return std::string(one_line) +
         "\n  sheaf find top plug muleback 2013     a question in plain words\n"
         "  sheaf convert 35 N·m to lbf·ft        a quantity in another unit\n"
         "\nsheaf --help says more.\n";
}

}  // namespace sheaf
