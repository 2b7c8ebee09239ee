// SPDX-License-Identifier: GPL-2.0-or-later
// sheafc diff: what changed between two states of the sheets, by what they say.
#include <CLI/CLI.hpp>
#include <memory>

#include "compiler/cli/command.h"
#include "compiler/cli/console.h"
#include "compiler/cli/flags.h"
#include "compiler/cli/snapshot.h"
#include "compiler/review/changes.h"

namespace sheafc {
namespace {

enum class Output { text, markdown, json };

struct Wishes {
  std::string before, after, git;
  CompileRequest request;
  Output output = Output::text;
};

using Sheets = sheaf::Result<std::vector<sheaf::SheetRecord>>;

// With --git the places are revisions of one folder; without a second, the folder as it stands.
Sheets load(const Wishes& wishes, const std::string& place) {
  if (wishes.git.empty()) return snapshot_of(place, wishes.request.libraries);
  if (place.empty()) return snapshot_of(wishes.git, wishes.request.libraries);
  return snapshot_of_revision(place, wishes.git, wishes.request.libraries);
}

ExitStatus failed(const std::string& message) {
  say_error(message);
  return ExitStatus::trouble;
}

ExitStatus diff(const Wishes& wishes) {
  if (wishes.after.empty() && wishes.git.empty())
    return failed("diff needs two places to compare; see sheafc diff --help");
  const Sheets before = load(wishes, wishes.before);
  if (!before) return failed(before.failure().message);
  const Sheets after = load(wishes, wishes.after);
  if (!after) return failed(after.failure().message);
  const std::vector<Change> changes = compare(*before, *after);
  switch (wishes.output) {
    case Output::text:
      print(changes_text(changes));
      break;
    case Output::markdown:
      print(changes_markdown(changes));
      break;
    case Output::json:
      print(changes_json(changes));
      break;
  }
  return changes.empty() ? ExitStatus::done : ExitStatus::fault;
}

}  // namespace

void add_diff(CLI::App& program, Action& action) {
  auto wishes = std::make_shared<Wishes>();
  CLI::App* command =
      program.add_subcommand("diff", "Say what changed between two states of the sheets, figure by figure.");
  command->footer(
      "Examples:\n"
      "  sheafc diff old.sheaf new.sheaf\n"
      "  sheafc diff --git specs-yaml main          revision main against the folder as it stands\n"
      "  sheafc diff --git specs-yaml HEAD~5 HEAD --markdown\n"
      "\n"
      "Exit status: 0 nothing changed, 1 something did, 2 wrong usage or unreadable.");
  command->add_option("before", wishes->before, "A library, a folder of sheets, or with --git a revision")
      ->required()
      ->type_name("OLD");
  command->add_option("after", wishes->after, "The same")->type_name("NEW");
  command->add_option("--git", wishes->git, "Compare revisions of this folder")->type_name("FOLDER");
  command->add_flag_callback(
      "--markdown", [wishes] { wishes->output = Output::markdown; }, "For a pull request");
  command->add_flag_callback(
      "--json", [wishes] { wishes->output = Output::json; }, "One JSON document");
  add_with_flag(*command, wishes->request);
  command->callback([&action, wishes] { action = [wishes] { return diff(*wishes); }; });
}

}  // namespace sheafc
