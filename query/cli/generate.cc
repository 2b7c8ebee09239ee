// SPDX-License-Identifier: GPL-2.0-or-later
// sheaf --generate WHAT: the manual page and the completions, from the tables that the help is made of.
#include "query/cli/generate.h"

#include <CLI/CLI.hpp>

#include "query/cli/command.h"
#include "query/console/program_page.h"
#include "query/library/vocabulary.h"
#include "query/quantity/unit.h"

namespace sheaf {
namespace {

CommandPage page_of(const CommandInfo& info) {
  CLI::App app;
  app.set_help_flag("-h,--help", "Say what the command does");
  Flags flags(app);
  info.make()->declare(flags);
  return {std::string(info.name),  std::string(info.words),    std::string(info.purpose),
          std::string(info.about), std::string(info.examples), flags_of(app)};
}

std::map<std::string, std::vector<std::string>> values() {
  std::map<std::string, std::vector<std::string>> known;
  for (const Unit& unit : all_units()) known["UNIT"].emplace_back(unit.symbol);
  for (const KindDeclaration& kind : all_kinds()) known["KIND"].emplace_back(kind.name);
  for (const std::string_view assembly : all_assemblies()) known["ASSEMBLY"].emplace_back(assembly);
  return known;
}

ProgramPage page_of_program() {
  ProgramPage page;
  page.name = "sheaf";
  page.version = SHEAF_VERSION;
  page.purpose = "answer from the workshop's spec sheets";
  page.about =
      "How tight, which socket, how much of which oil, which seal fits: sheaf answers from one library file, without a\n"
      "network, in the unit of the tool in hand, and names who says so. Alone on a terminal it answers as one types.\n"
      "A figure from the machine's own maker, in its current edition, always comes first.\n";
  for (const CommandInfo& info : all_commands()) page.commands.push_back(page_of(info));
  page.flags = {{{"-h", "--help"}, "", {}, "List the commands"},
                {{"--version"},
                 "",
                 {},
                 "Name the versions of the program, of the library format and of the libraries used"},
                {{"--library"}, "FILE", {}, "Ask this library; again for several, the first going first"},
                {{"--no-input"}, "", {}, "Never open the prompt"},
                {{"--generate"},
                 "WHAT",
                 {"man", "complete-bash", "complete-zsh", "complete-fish"},
                 "Print the manual page, or the completion for a shell"}};
  page.environment = {
      {"SHEAF_LIBRARY", "The libraries to ask, parted by colons, where no --library is given."},
      {"XDG_DATA_HOME, XDG_DATA_DIRS", "Where libraries are looked for, in sheaf/ of each."},
      {"XDG_STATE_HOME", "Where the prompt keeps what was typed."},
      {"NO_COLOR, CLICOLOR_FORCE, TERM", "Whether answers are coloured."}};
  page.files = {
      {"NAME.sheaf", "A library: every one beside the program, else in the first data folder that has any."}};
  page.statuses = {
      {"0", "Found, or done."}, {"1", "Nothing found."}, {"2", "Wrong usage, or the world failed."}};
  page.see_also = "sheafc(1)";
  page.values = values();
  return page;
}

}  // namespace

std::string generate(const std::string& what) { return generated(page_of_program(), what); }

}  // namespace sheaf
