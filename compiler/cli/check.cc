// SPDX-License-Identifier: GPL-2.0-or-later
// sheafc check: what is wrong with the sheets, and where.
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "compiler/cli/command.h"
#include "compiler/cli/compilation.h"
#include "compiler/cli/flags.h"
#include "query/library/utf8.h"

namespace sheafc {
namespace {

enum class Output { text, json, sarif, annotations };

struct Wishes {
  CompileRequest request;
  Output output = Output::text;
  bool all = false;
  bool allowed = false;
  bool werror = false;
  bool quiet = false;
  Colour colour = Colour::automatic;
};

// "torque-over-proof-load  sorvane-41-rod/top-plug  reason (until 2027-01-01)", with its place.
ExitStatus list_allowed(const Compilation& compilation) {
  for (const Allowed& allowed : compilation.allowed) {
    print(std::string(allowed.where.file) + ":" + std::to_string(allowed.where.line) + ": " +
          allowed.address + ": " + std::string(allowed.rule) + ": " + sheaf::printable(allowed.reason) +
          (allowed.until ? " (until " + to_text(*allowed.until) + ")" : "") + "\n");
  }
  say(counted(compilation.allowed.size(), "allowance", "allowances"));
  return ExitStatus::done;
}

ExitStatus check(const Wishes& wishes) {
  const auto compiled = compile(wishes.request);
  if (!compiled) {
    say_error(compiled.failure().message);
    return ExitStatus::trouble;
  }
  const Compilation& compilation = *compiled;
  const Diagnostics& found = compilation.diagnostics;
  if (wishes.allowed) return list_allowed(compilation);
  if (!compilation.rules_ran) say("a table cannot be read, so figures are not checked yet");
  const LineSource lines = lines_on_disk();
  switch (wishes.output) {
    case Output::json:
      print(json_lines_report(found));
      break;
    case Output::sarif:
      print(sarif_report(found, lines, all_rules(), SHEAF_VERSION));
      break;
    case Output::annotations:
      print(annotation_report(found, lines));
      break;
    case Output::text: {
      TextStyle style = style_for(wishes.colour, STDOUT_FILENO);
      if (wishes.all) style.most = 0;
      print(text_report(found, lines, style));
      if (!wishes.quiet)
        say(counted(compilation.files.size(), "sheet", "sheets") + ": " + fault_counts(found));
    }
  }
  return found.errors() > 0 || (wishes.werror && found.warnings() > 0) ? ExitStatus::fault : ExitStatus::done;
}

}  // namespace

void add_check(CLI::App& program, Action& action) {
  auto wishes = std::make_shared<Wishes>();
  CLI::App* command = program.add_subcommand("check", "Say what is wrong with sheets, and where.");
  command->footer(
      "Examples:\n"
      "  sheafc check specs-yaml\n"
      "  sheafc check my-fork.yaml --with orrindale.sheaf\n"
      "\n"
      "Exit status: 0 no errors, 1 errors (with --werror, warnings too), 2 wrong usage or unreadable.");
  command->add_option("sheets", wishes->request.folders, "Folders of sheets, or single sheets")
      ->required()
      ->type_name("FOLDER|FILE");
  const auto output_flag = [&](const char* flag, Output output, const char* help) {
    command->add_flag_callback(
        flag, [wishes, output] { wishes->output = output; }, help);
  };
  output_flag("--json", Output::json, "One JSON object a line");
  output_flag("--sarif", Output::sarif, "One SARIF 2.1.0 log");
  output_flag("--annotations", Output::annotations, "Lines that a CI service turns into annotations");
  command->add_flag("--all", wishes->all, "Show every report, however many, on a terminal too");
  command->add_flag("--allowed", wishes->allowed,
                    "List the rules that are set aside, each with its reason, instead");
  command->add_flag("--werror", wishes->werror, "End with 1 for warnings as for errors");
  command->add_flag("-q,--quiet", wishes->quiet, "No closing line");
  add_with_flag(*command, wishes->request);
  add_colour_flag(*command, wishes->colour);
  command->callback([&action, wishes] { action = [wishes] { return check(*wishes); }; });
}

}  // namespace sheafc
