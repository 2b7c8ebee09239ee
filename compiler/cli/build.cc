// SPDX-License-Identifier: GPL-2.0-or-later
// sheafc build: sheets into one library file. With errors nothing is written and the old one stays.
#include <unistd.h>

#include <memory>

#include <CLI/CLI.hpp>

#include "compiler/cli/command.h"
#include "compiler/cli/compilation.h"
#include "compiler/cli/flags.h"
#include "compiler/cli/report.h"

namespace sheafc {
namespace {

struct Wishes {
  std::vector<std::string> folders;
  std::string output;
  bool quiet = false;
  Colour colour = Colour::automatic;
};

ExitStatus build(const Wishes& wishes) {
  const auto compiled = compile(wishes.folders);
  if (!compiled) {
    say_error(compiled.failure().message);
    return ExitStatus::trouble;
  }
  return ExitStatus::trouble;
}

}  // namespace

void add_build(CLI::App& program, Action& action) {
  auto wishes = std::make_shared<Wishes>();
  CLI::App* command = program.add_subcommand("build", "Compile sheets into one library file.");
  command->add_option("sheets", wishes->folders, "Folders of sheets")->required()->type_name("FOLDER");
  command->add_option("-o,--output", wishes->output, "The library to write")->required()->type_name("NAME.sheaf");
  command->add_flag("-q,--quiet", wishes->quiet, "No closing line");
  add_colour_flag(*command, wishes->colour);
  command->callback([&action, wishes] { action = [wishes] { return build(*wishes); }; });
}

}  // namespace sheafc
