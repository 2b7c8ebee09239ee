// SPDX-License-Identifier: GPL-2.0-or-later
// sheafc schema: the language for an editor, and for the manual.
#include "compiler/sheet/schema.h"

#include <CLI/CLI.hpp>
#include <memory>

#include "compiler/check/check.h"
#include "compiler/cli/command.h"
#include "compiler/cli/console.h"
#include "compiler/sheet/manual.h"
#include "compiler/source/source_file.h"
#include "query/library/whole_file.h"

namespace sheafc {
namespace {

struct Wishes {
  std::string manual;
  bool check = false;
};

ExitStatus failed(const std::string& message) {
  say_error(message);
  return ExitStatus::trouble;
}

ExitStatus fill_manual(const Wishes& wishes) {
  const auto file = read_source(wishes.manual, wishes.manual);
  if (!file) return failed(file.failure().message);
  const auto filled = with_key_tables(file->bytes());
  if (!filled) return failed(wishes.manual + ": " + filled.failure().message);
  if (*filled == file->bytes()) return ExitStatus::done;
  print(wishes.manual + "\n");
  if (wishes.check) return ExitStatus::fault;
  if (const auto failure = sheaf::replace_file(wishes.manual, *filled)) return failed(failure->message);
  return ExitStatus::done;
}

ExitStatus schema(const Wishes& wishes) {
  if (!wishes.manual.empty()) return fill_manual(wishes);
  print(json_schema(check_rules()));
  return ExitStatus::done;
}

}  // namespace

void add_schema(CLI::App& program, Action& action) {
  auto wishes = std::make_shared<Wishes>();
  CLI::App* command =
      program.add_subcommand("schema", "Print the sheet language as a JSON Schema, for editors.");
  command->footer(
      "In an editor with a YAML language server, name the schema in a sheet's first line:\n"
      "  # yaml-language-server: $schema=sheet.schema.json");
  CLI::Option* manual =
      command->add_option("--manual", wishes->manual, "Fill the tables of keys in a manual instead")
          ->type_name("FILE");
  command->add_flag("--check", wishes->check, "Change nothing: end with 1 if the manual's tables are stale")
      ->needs(manual);
  command->callback([&action, wishes] { action = [wishes] { return schema(*wishes); }; });
}

}  // namespace sheafc
