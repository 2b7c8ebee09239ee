// SPDX-License-Identifier: GPL-2.0-or-later
#include <CLI/CLI.hpp>

#include "query/console/program_page.h"

namespace sheaf {
namespace {

// CLI11 adds what it tests a value by: "WHEN:{auto,always,never}", "N:INT in [1 - 10000]".
void read_type(std::string type, FlagPage& flag) {
  const auto colon = type.find(':');
  flag.value = type.substr(0, colon);
  if (colon == std::string::npos || type.size() < colon + 3 || type[colon + 1] != '{') return;
  std::string list = type.substr(colon + 2, type.size() - colon - 3);
  while (!list.empty()) {
    const auto comma = list.find(',');
    flag.choices.push_back(list.substr(0, comma));
    list.erase(0, comma == std::string::npos ? list.size() : comma + 1);
  }
}

}  // namespace

std::vector<FlagPage> flags_of(const CLI::App& command) {
  std::vector<FlagPage> flags;
  for (const CLI::Option* option : command.get_options()) {
    FlagPage flag;
    for (const std::string& name : option->get_snames()) flag.names.push_back("-" + name);
    for (const std::string& name : option->get_lnames()) flag.names.push_back("--" + name);
    if (flag.names.empty()) continue;  // a word
    if (option->get_items_expected_max() > 0) read_type(option->get_type_name(), flag);
    flag.purpose = option->get_description();
    flags.push_back(std::move(flag));
  }
  return flags;
}

std::string generated(const ProgramPage& program, const std::string& what) {
  if (what == "man") return man_page(program);
  if (what == "complete-bash") return bash_completion(program);
  if (what == "complete-zsh") return zsh_completion(program);
  if (what == "complete-fish") return fish_completion(program);
  return {};
}

}  // namespace sheaf
