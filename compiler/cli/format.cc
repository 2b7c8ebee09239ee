// SPDX-License-Identifier: GPL-2.0-or-later
// sheafc format: sheets in their canonical form.
#include "compiler/sheet/format.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>
#include <optional>
#include <set>

#include "compiler/cli/command.h"
#include "compiler/cli/console.h"
#include "compiler/sheet/parallel.h"
#include "compiler/sheet/workspace.h"
#include "query/library/whole_file.h"

namespace sheafc {
namespace {

struct Wishes {
  std::vector<std::string> folders;
  bool check = false;
};

struct Outcome {
  std::optional<std::string> changed;  // the new text, if it is another
  std::string refused;                 // why it is left alone
};

Outcome format_one(const SourceFile& file, const Workspace& workspace, bool faulty) {
  if (faulty) return {{}, "has faults; see sheafc check"};
  const auto sheet = std::ranges::find_if(
      workspace.sheets, [&](const auto& candidate) { return candidate->file.get() == &file; });
  if (sheet == workspace.sheets.end()) return {{}, "is no sheet"};
  auto text = format_sheet(**sheet);
  if (!text) return {{}, text.failure().message};
  if (*text == file.bytes()) return {};
  return {std::move(text).value(), {}};
}

std::set<std::string_view> faulty_files(const Diagnostics& faults) {
  std::set<std::string_view> names;
  for (const Diagnostic& fault : faults.all()) {
    if (fault.severity == Severity::error) names.insert(fault.where.file);
  }
  return names;
}

ExitStatus write_changes(const Workspace& workspace, const std::vector<Outcome>& outcomes, bool check) {
  ExitStatus status = ExitStatus::done;
  for (std::size_t i = 0; i < outcomes.size(); ++i) {
    const std::string name(workspace.files[i]->name());
    if (!outcomes[i].refused.empty()) {
      say_error(name + " " + outcomes[i].refused);
      status = std::max(status, ExitStatus::fault);
    }
    if (!outcomes[i].changed) continue;
    print(name + "\n");
    if (check) {
      status = std::max(status, ExitStatus::fault);
    } else if (const auto failure = sheaf::replace_file(name, *outcomes[i].changed)) {
      say_error(failure->message);
      return ExitStatus::trouble;
    }
  }
  return status;
}

ExitStatus format(const Wishes& wishes) {
  Diagnostics faults;
  const auto read = read_workspace(wishes.folders, faults);
  if (!read) {
    say_error(read.failure().message);
    return ExitStatus::trouble;
  }
  const std::set<std::string_view> faulty = faulty_files(faults);
  std::vector<Outcome> outcomes(read->files.size());
  for_all(outcomes.size(), [&](std::size_t i) {
    const SourceFile& file = *read->files[i];
    outcomes[i] = format_one(file, *read, faulty.contains(file.name()));
  });
  return write_changes(*read, outcomes, wishes.check);
}

}  // namespace

void add_format(CLI::App& program, Action& action) {
  auto wishes = std::make_shared<Wishes>();
  CLI::App* command = program.add_subcommand(
      "format", "Tidy the order, spelling and spacing of sheets; name those that changed.");
  command->footer(
      "Example:\n"
      "  sheafc format specs-yaml\n"
      "\n"
      "Every remark stays. A sheet with faults, or one that could not be tidied without changing what it "
      "says, is left\n"
      "alone and named.\n"
      "Exit status: 0 tidy now, 1 something is left alone (with --check: would change), 2 unreadable or "
      "unwritable.");
  command->add_option("sheets", wishes->folders, "Folders of sheets, or single sheets")
      ->required()
      ->type_name("FOLDER|FILE");
  command->add_flag("--check", wishes->check,
                    "Change nothing: name the sheets that would change, and end with 1 if there are any");
  command->callback([&action, wishes] { action = [wishes] { return format(*wishes); }; });
}

}  // namespace sheafc
