// SPDX-License-Identifier: GPL-2.0-or-later
// $XDG_STATE_HOME, else ~/.local/state, as the base directory specification says.
#include "query/cli/history.h"

#include <sys/stat.h>

#include <cstdlib>
#include <filesystem>

namespace sheaf {
namespace {

std::string state_folder() {
  const char* state = std::getenv("XDG_STATE_HOME");
  if (state && *state == '/') return state;
  const char* home = std::getenv("HOME");
  return home && *home == '/' ? std::string(home) + "/.local/state" : std::string();
}

}  // namespace

std::string history_file() {
  const std::string state = state_folder();
  if (state.empty()) return {};
  const std::string folder = state + "/sheaf";
  std::error_code failed;
  std::filesystem::create_directories(state, failed);
  const bool there = ::mkdir(folder.c_str(), 0700) == 0 || std::filesystem::is_directory(folder, failed);
  return there ? folder + "/history" : std::string();
}

}  // namespace sheaf
