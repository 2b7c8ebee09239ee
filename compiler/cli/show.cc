// SPDX-License-Identifier: GPL-2.0-or-later
// sheafc show: what a sheet became, with everything that it takes from elsewhere, and where from.
#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "compiler/cli/command.h"
#include "compiler/cli/compilation.h"
#include "compiler/cli/console.h"
#include "compiler/cli/flags.h"
#include "query/library/utf8.h"

namespace sheafc {
namespace {

constexpr std::size_t place_column = 60;

// "    torque: 28 ± 3 N·m            sorvane-41-rod.yaml:36"
std::string with_place(std::string line, const Span& where, const LinkedSheets& linked) {
  const auto characters = static_cast<std::size_t>(
      std::ranges::count_if(line, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
  line += std::string(characters < place_column ? place_column - characters : 2, ' ');
  return line + "# " + std::string(linked.path_of(where.file)) + ":" + std::to_string(where.line) + "\n";
}

class Page {
 public:
  explicit Page(const LinkedSheets& linked) : linked_(linked) {}

  std::string of(const LinkedSheet& sheet) {
    add_fields(sheet, "");
    for (const LinkedEntry& entry : sheet.entries) {
      text_ += "\n";
      add(entry.id + (entry.variant.empty() ? "" : " (" + entry.variant + ")") + ": " +
              std::string(entry.kind),
          entry.where);
      add_fields(entry, "  ");
    }
    return std::move(text_);
  }

 private:
  void add(std::string line, const Span& where) {
    text_ += with_place(sheaf::printable(line), where, linked_);
  }

  void add_fields(const Fields& fields, const std::string& indent) {
    for (const Field* field : fields.all()) {
      for (const Value& value : field->values) add_value(*field, value, indent);
    }
  }

  void add_value(const Field& field, const Value& value, const std::string& indent) {
    const std::string key = indent + std::string(field.key()) + ":";
    if (const Fields* record = value.as<Fields>()) {
      add(key, value.where);
      add_fields(*record, indent + "  ");
    } else if (const Allowances* allowances = value.as<Allowances>()) {
      add(key, value.where);
      for (const Allowance& allowance : *allowances)
        add(indent + "  " + allowance.rule + ": " + allowance.reason, allowance.where);
    } else {
      add(key + " " + value.text, value.where);
    }
  }

  const LinkedSheets& linked_;
  std::string text_;
};

ExitStatus show(const std::string& name, const CompileRequest& request) {
  std::optional<std::string> page;
  const auto take = [&](const Part& part, const std::vector<std::string>&,
                        bool) -> std::optional<sheaf::Failure> {
    const LinkedSheet* sheet = part.linked.sheet_named(name);
    const bool is_of_part =
        std::ranges::any_of(part.own, [&](const NumberedSheet& own) { return own.sheet == sheet; });
    if (sheet && (is_of_part || sheet->borrowed)) page = Page(part.linked).of(*sheet);
    return std::nullopt;
  };
  const auto compiled = compile(request, {.each_part = take});
  if (!compiled) {
    say_error(compiled.failure().message);
    return ExitStatus::trouble;
  }
  const Compilation& compilation = *compiled;
  if (!page) {
    say_error("there is no sheet '" + name + "' in " + request.folders.front());
    return ExitStatus::trouble;
  }
  print(*page);
  if (compilation.diagnostics.errors() == 0) return ExitStatus::done;
  say("the sheets have errors, so this may lack something: " + fault_counts(compilation.diagnostics) +
      "; see sheafc check");
  return ExitStatus::fault;
}

}  // namespace

void add_show(CLI::App& program, Action& action) {
  struct Wishes {
    std::string name;
    CompileRequest request = {.folders = {"specs-yaml"}, .libraries = {}};
  };
  auto wishes = std::make_shared<Wishes>();
  CLI::App* command = program.add_subcommand(
      "show", "Print what a sheet became: bases and variants resolved, each value with its place.");
  command->footer("Example:\n  sheafc show sorvane-43-rod --sheets specs-yaml");
  command->add_option("sheet", wishes->name, "The sheet's name")->required()->type_name("SHEET");
  command->add_option("--sheets", wishes->request.folders, "Folders of sheets; specs-yaml unless given")
      ->type_name("FOLDER");
  add_with_flag(*command, wishes->request);
  command->callback([&action, wishes] { action = [wishes] { return show(wishes->name, wishes->request); }; });
}

}  // namespace sheafc
