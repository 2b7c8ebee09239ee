// SPDX-License-Identifier: GPL-2.0-or-later
// sheafc check: what is wrong with the sheets, and where.
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
  bool json = false;
  bool all = false;
  bool werror = false;
  bool quiet = false;
  Colour colour = Colour::automatic;
};

ExitStatus check(const Wishes& wishes) {
  const auto compiled = compile(wishes.folders);
  if (!compiled) {
    say_error(compiled.failure().message);
    return ExitStatus::trouble;
  }
  const Compilation& compilation = **compiled;
  const Diagnostics& found = compilation.diagnostics;
  if (wishes.json) {
    print(report_json(found));
  } else {
    const std::size_t cap = wishes.all || !is_terminal(STDOUT_FILENO) ? 0 : most_on_terminal;
    print(report_text(found, compilation.workspace, use_colour(wishes.colour, STDOUT_FILENO), cap));
    if (!wishes.quiet) say(std::to_string(compilation.workspace.files.size()) + " sheets: " + tally(found));
  }
  return found.errors() > 0 || (wishes.werror && found.warnings() > 0) ? ExitStatus::fault : ExitStatus::done;
}

}  // namespace

void add_check(CLI::App& program, Action& action) {
  auto wishes = std::make_shared<Wishes>();
  CLI::App* command = program.add_subcommand("check", "Say what is wrong with sheets, and where.");
  command->add_option("sheets", wishes->folders, "Folders of sheets, or single sheets")->required()->type_name("FOLDER|FILE");
  command->add_flag("--json", wishes->json, "One JSON object a line");
  command->add_flag("--all", wishes->all, "Show every report, however many, on a terminal too");
  command->add_flag("--werror", wishes->werror, "End with 1 for warnings as for errors");
  command->add_flag("-q,--quiet", wishes->quiet, "No closing line");
  add_colour_flag(*command, wishes->colour);
  command->callback([&action, wishes] { action = [wishes] { return check(*wishes); }; });
}

}  // namespace sheafc
