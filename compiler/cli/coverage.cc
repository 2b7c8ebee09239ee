// SPDX-License-Identifier: GPL-2.0-or-later
// sheafc coverage: what is recorded for each machine, and what is missing, unchecked or old.
#include "compiler/review/coverage.h"

#include <CLI/CLI.hpp>
#include <memory>

#include "compiler/cli/command.h"
#include "compiler/cli/console.h"
#include "compiler/cli/flags.h"
#include "compiler/cli/snapshot.h"

namespace sheafc {
namespace {

struct Wishes {
  std::string place;
  CompileRequest request;
  int years = 3;
  bool json = false;
};

ExitStatus cover(const Wishes& wishes) {
  const auto sheets = snapshot_of(wishes.place, wishes.request.libraries);
  if (!sheets) {
    say_error(sheets.failure().message);
    return ExitStatus::trouble;
  }
  Date day = today();
  day.year -= wishes.years;
  const auto machines = coverage(*sheets, to_text(day));
  print(wishes.json ? coverage_json(machines) : coverage_text(machines));
  return ExitStatus::done;
}

}  // namespace

void add_coverage(CLI::App& program, Action& action) {
  auto wishes = std::make_shared<Wishes>();
  CLI::App* command =
      program.add_subcommand("coverage", "Say for each machine what is recorded, missing, unchecked or old.");
  command->footer(
      "Examples:\n  sheafc coverage specs-yaml\n  sheafc coverage orrindale.sheaf --years 2 --json");
  command->add_option("place", wishes->place, "A library, or a folder of sheets")
      ->required()
      ->type_name("FOLDER|NAME.sheaf");
  command->add_option("--years", wishes->years, "What was checked longer ago counts as old; 3 unless given")
      ->check(CLI::Range(0, 100))
      ->type_name("N");
  command->add_flag("--json", wishes->json, "One JSON document");
  add_with_flag(*command, wishes->request);
  command->callback([&action, wishes] { action = [wishes] { return cover(*wishes); }; });
}

}  // namespace sheafc
