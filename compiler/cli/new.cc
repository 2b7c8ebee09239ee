// SPDX-License-Identifier: GPL-2.0-or-later
// sheafc new: starts a sheet, from flags, from a few answers at a terminal, or from a CSV.
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <iostream>
#include <memory>

#include "compiler/cli/command.h"
#include "compiler/cli/compilation.h"
#include "compiler/cli/console.h"
#include "compiler/cli/flags.h"
#include "compiler/sheet/format.h"
#include "compiler/sheet/forms.h"
#include "compiler/sheet/new_sheet.h"
#include "compiler/sheet/suggestion.h"
#include "query/library/near_word.h"
#include "query/library/whole_file.h"

namespace sheafc {
namespace {

struct Wishes {
  SheetStart start;
  std::string csv, kind;
  std::string folder = ".";
  bool no_input = false;
  Colour colour = Colour::automatic;
};

ExitStatus failed(const std::string& message, const std::string& advice = {}) {
  say_error(message);
  if (!advice.empty()) hint(advice);
  return ExitStatus::trouble;
}

// "fork" is an assembly, "thread-size" a table; words and crib are forms themselves.
bool find_form(SheetStart& start) {
  const auto is = [&](std::string_view name) { return name == start.what; };
  if (std::ranges::any_of(sheaf::all_assemblies(), is))
    start.form = "assembly";
  else if (std::ranges::any_of(sheaf::all_row_kinds(), is, &sheaf::RowKind::name))
    start.form = "table";
  else if (is("words") || is("crib"))
    start.form = start.what;
  return !start.form.empty();
}

ExitStatus unknown_what(const std::string& what) {
  std::vector<std::string_view> names = {"words", "crib"};
  for (const std::string_view assembly : sheaf::all_assemblies()) names.push_back(assembly);
  for (const sheaf::RowKind& kind : sheaf::all_row_kinds()) names.push_back(kind.name);
  const std::string_view near = sheaf::near_word(what, names);
  return failed("there is no assembly or table '" + what + "'",
                near.empty() ? "one of: " + any_of(names) : "did you mean '" + std::string(near) + "'?");
}

// Questions go to standard error; an empty answer leaves the key open. False at the end of input.
bool ask(const char* question, std::string& answer) {
  if (!answer.empty()) return true;
  say_as_is(question);
  return static_cast<bool>(std::getline(std::cin, answer));
}

bool ask_what(SheetStart& start) {
  return ask("what is it (fork, rear-brake, thread-size, words ...): ", start.what) &&
         ask("the sheet's short name, as sorvane-41-rod: ", start.name);
}

bool ask_all(SheetStart& start) {
  say_as_is("An empty answer leaves the line open; Ctrl-D leaves.\n");
  if (!ask("title, for people: ", start.title)) return false;
  if (start.form == "assembly") {
    const bool answered = ask("maker of the assembly: ", start.maker) &&
                          ask("maker of the machine: ", start.make) && ask("model: ", start.model) &&
                          ask("model years, as 2011..2015: ", start.years);
    if (!answered) return false;
  }
  if (start.form == "words" || start.form == "crib") return true;
  return ask("title of the paper the figures come from: ", start.source) &&
         ask("who checked them: ", start.by);
}

// The body from the CSV, every fault at its cell. Nothing is written while there is one.
ExitStatus take_csv(Wishes& wishes) {
  SheetStart& start = wishes.start;
  const auto file = read_source(wishes.csv, wishes.csv);
  if (!file) return failed(file.failure().message);
  const auto csv = parse_csv(file->name(), file->bytes());
  if (!csv) return failed(csv.failure().message);
  Diagnostics faults;
  if (start.form == "table") {
    start.body = rows_from_csv(*csv, faults);
  } else {
    if (!sheaf::kind_named(wishes.kind))
      return failed("--from-csv needs --kind, a kind of entry, as --kind fastener");
    start.body = entries_from_csv(*csv, wishes.kind, faults);
  }
  if (csv->rows.empty()) return failed(wishes.csv + " has no row below its header");
  faults.sort();
  const LineSource lines = [&](std::string_view, int line) { return file->line(line); };
  say_as_is(text_report(faults, lines, style_for(wishes.colour, STDERR_FILENO)));
  if (faults.errors() == 0) return ExitStatus::done;
  say(fault_counts(faults) + "; no sheet is written");
  return ExitStatus::fault;
}

// In its canonical form where it is whole already.
std::string tidied(const SheetStart& start) {
  std::string text = start_of_sheet(start);
  Diagnostics faults;
  const std::vector<SheetText> texts = {{start.name + ".yaml", text}};
  const Workspace workspace = read_texts(texts, faults);
  if (faults.errors() > 0 || workspace.sheets.empty()) return text;
  auto formatted = format_sheet(*workspace.sheets.front());
  return formatted ? std::move(formatted).value() : text;
}

ExitStatus make(Wishes wishes) {
  SheetStart& start = wishes.start;
  const bool asks =
      wishes.csv.empty() && !wishes.no_input && is_terminal(STDIN_FILENO) && is_terminal(STDOUT_FILENO);
  if (asks && !ask_what(start)) return ExitStatus::interrupted;
  if (start.what.empty() || start.name.empty()) {
    return failed("a sheet needs what it is about and its name",
                  "as in: sheafc new fork my-fork; see sheafc new --help");
  }
  if (!find_form(start)) return unknown_what(start.what);
  if (const auto name = parse_name(start.name); !name) return failed(name.failure().message);
  if (!wishes.csv.empty()) {
    if (const ExitStatus status = take_csv(wishes); status != ExitStatus::done) return status;
  } else if (asks && !ask_all(start)) {
    return ExitStatus::interrupted;
  }
  start.day = to_text(today());
  const std::string path = wishes.folder + "/" + start.name + ".yaml";
  if (const auto failure = sheaf::create_file(path, tidied(start))) return failed(failure->message);
  print(path + "\n");
  return ExitStatus::done;
}

}  // namespace

void add_new(CLI::App& program, Action& action) {
  auto wishes = std::make_shared<Wishes>();
  SheetStart& start = wishes->start;
  CLI::App* command = program.add_subcommand("new", "Start a sheet.");
  command->footer(
      "Examples:\n"
      "  sheafc new fork my-fork --make Haldrek --model 'Muleback 380' --years 2011..2015\n"
      "  sheafc new rear-brake my-brake --from-csv torques.csv --kind fastener\n"
      "      the first line of the CSV names the keys: name, thread, torque (N·m), state");
  command
      ->add_option("what", start.what,
                   "An assembly (fork, rear-brake ...), a kind of table (thread-size ...), words or crib")
      ->type_name("WHAT");
  command->add_option("name", start.name, "The sheet's name")->type_name("NAME");
  command->add_option("--title", start.title, "What it is about, for people");
  command->add_option("--maker", start.maker, "Who makes the assembly");
  command->add_option("--make", start.make, "Who makes the machine");
  command->add_option("--model", start.model, "The machine's model");
  command->add_option("--years", start.years, "Its model years, as 2011..2015");
  command->add_option("--source", start.source, "The paper's title");
  command->add_option("--by", start.by, "Who checked the figures");
  command
      ->add_option("--from-csv", wishes->csv,
                   "Entries or rows from a CSV file, whose first line names the keys")
      ->type_name("FILE");
  command->add_option("--kind", wishes->kind, "The kind of entry in the CSV, as fastener");
  command->add_option("--into", wishes->folder, "The folder to put it in; this one unless given")
      ->type_name("FOLDER");
  command->add_flag("--no-input", wishes->no_input, "Ask nothing, even at a terminal");
  add_colour_flag(*command, wishes->colour);
  command->callback([&action, wishes] { action = [wishes] { return make(*wishes); }; });
}

}  // namespace sheafc
