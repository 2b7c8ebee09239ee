// SPDX-License-Identifier: GPL-2.0-or-later
// sheafc --generate WHAT: the manual page and the completions, from the commands as they are declared.
#include "compiler/cli/generate.h"

#include <CLI/CLI.hpp>

#include "compiler/cli/compilation.h"
#include "query/console/program_page.h"
#include "query/library/vocabulary.h"

namespace sheafc {
namespace {

std::string words_of(const CLI::App& command) {
  std::string words;
  for (const CLI::Option* option : command.get_options()) {
    if (!option->get_positional() || !option->get_lnames().empty()) continue;
    const std::string type = option->get_type_name();
    words += (words.empty() ? "" : " ") + type.substr(0, type.find(':'));
    if (option->get_items_expected_max() > 1) words += "...";
  }
  return words;
}

std::string without_end(std::string text, char end) {
  if (text.ends_with(end)) text.pop_back();
  return text;
}

// A footer begins with examples, each after two spaces; what else it says follows a blank line.
void part_footer(const std::string& footer, sheaf::CommandPage& page) {
  for (std::size_t at = 0; at < footer.size();) {
    const std::size_t end = std::min(footer.find('\n', at), footer.size());
    const std::string line = footer.substr(at, end - at);
    if (line.starts_with("  "))
      page.examples += line.substr(2) + "\n";
    else if (!line.empty() && line != "Examples:")
      page.about += line + "\n";
    at = end + 1;
  }
}

sheaf::CommandPage page_of(const CLI::App& command) {
  sheaf::CommandPage page;
  page.name = command.get_name();
  page.words = words_of(command);
  page.purpose = without_end(command.get_description(), '.');
  page.flags = sheaf::flags_of(command);
  part_footer(command.get_footer(), page);
  return page;
}

std::map<std::string, std::vector<std::string>> values() {
  std::map<std::string, std::vector<std::string>> known;
  for (const RuleInfo& rule : all_rules()) known["RULE"].emplace_back(rule.name);
  for (const std::string_view assembly : sheaf::all_assemblies()) known["ASSEMBLY"].emplace_back(assembly);
  return known;
}

}  // namespace

std::string generate(const CLI::App& program, const std::string& what) {
  sheaf::ProgramPage page;
  page.name = "sheafc";
  page.version = SHEAF_VERSION;
  page.purpose = "prove spec sheets and compile them into a library";
  page.about =
      "Writers keep spec sheets as YAML; sheafc proves them against each other, against published tables and against\n"
      "the physics of a screw, and binds them into one library file, from which sheaf answers.\n"
      "A library appears whole or not at all: with errors, and after a failure, the old one stays.\n";
  for (const CLI::App* command : program.get_subcommands({})) page.commands.push_back(page_of(*command));
  page.flags = sheaf::flags_of(program);
  page.environment = {{"XDG_CACHE_HOME", "Where build keeps, in sheaf/, what may shorten the next build."},
                      {"SOURCE_DATE_EPOCH", "Stands for today, in seconds since 1970."},
                      {"NO_COLOR, CLICOLOR_FORCE, TERM", "Whether reports are coloured."}};
  page.files = {{"NAME.yaml", "A sheet."}, {"NAME.sheaf", "A library."}};
  page.statuses = {{"0", "Done; warnings are allowed."},
                   {"1", "The sheets have errors, or differ, or would be changed."},
                   {"2", "Wrong usage, or the world failed."},
                   {"130", "Interrupted; nothing half-written is left."}};
  page.see_also = "sheaf(1)";
  page.values = values();
  return sheaf::generated(page, what);
}

}  // namespace sheafc
