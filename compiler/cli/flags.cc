// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/flags.h"

#include <CLI/CLI.hpp>
#include <map>

namespace sheafc {

void add_colour_flag(CLI::App& command, Colour& colour) {
  static const std::map<std::string, Colour> words = {
      {"auto", Colour::automatic}, {"always", Colour::always}, {"never", Colour::never}};
  command
      .add_option_function<std::string>(
          "--color", [&colour](const std::string& word) { colour = words.at(word); }, "auto, always or never")
      ->check(CLI::IsMember({"auto", "always", "never"}))
      ->type_name("WHEN");
  command.add_flag_callback(
      "--no-color", [&colour] { colour = Colour::never; }, "As --color never");
}

void add_with_flag(CLI::App& command, CompileRequest& request) {
  command
      .add_option("--with", request.libraries,
                  "A library to build against: bases, tables and words resolve there too")
      ->type_name("NAME.sheaf")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
}

}  // namespace sheafc
