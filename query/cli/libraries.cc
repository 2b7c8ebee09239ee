// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/cli/libraries.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>

namespace sheaf {
namespace {

namespace fs = std::filesystem;

std::string variable(const char* name) {
  const char* value = std::getenv(name);
  return value ? value : "";
}

std::vector<std::string> parts_of(const std::string& list) {
  std::vector<std::string> parts;
  for (std::size_t at = 0; at <= list.size();) {
    const std::size_t end = std::min(list.find(':', at), list.size());
    if (end > at) parts.push_back(list.substr(at, end - at));
    at = end + 1;
  }
  return parts;
}

// An unset, empty or relative folder is none, as the base directory specification says.
std::string data_home() {
  const std::string home = variable("XDG_DATA_HOME");
  if (home.starts_with('/')) return home;
  const std::string user = variable("HOME");
  return user.starts_with('/') ? user + "/.local/share" : "";
}

std::vector<std::string> folders() {
  std::vector<std::string> all;
  std::error_code failed;
  const fs::path program = fs::read_symlink("/proc/self/exe", failed).parent_path();
  if (!failed) all.push_back(program.string());
  const std::string home = data_home();
  if (!home.empty()) all.push_back(home + "/sheaf");
  if (!failed) all.push_back((program.parent_path() / "share/sheaf").string());  // installed with it
  const std::string listed = variable("XDG_DATA_DIRS");
  for (const auto& folder : parts_of(listed.empty() ? "/usr/local/share:/usr/share" : listed))
    if (folder.starts_with('/')) all.push_back(folder + "/sheaf");
  return all;
}

std::vector<std::string> libraries_in(const std::string& folder) {
  std::vector<std::string> paths;
  std::error_code failed;
  for (fs::directory_iterator at(folder, failed), end; !failed && at != end; at.increment(failed))
    if (at->path().extension() == ".sheaf" && at->is_regular_file(failed))
      paths.push_back(at->path().string());
  std::ranges::sort(paths);
  return paths;
}

Failure cannot_ask(const std::string& path, const Failure& why, std::string_view found_by) {
  std::string message = why.message;
  if (found_by == "SHEAF_LIBRARY") message += "; SHEAF_LIBRARY names it";
  std::error_code failed;
  if (!fs::exists(path, failed)) message += "; make it with sheafc build specs-yaml -o " + path;
  return Failure{message};
}

Result<OpenLibraries> open_all(const std::vector<std::string>& paths, std::string found_by) {
  OpenLibraries open;
  open.found_by = std::move(found_by);
  for (const auto& path : paths) {
    auto library = open_library(path);
    if (!library) return cannot_ask(path, library.failure(), open.found_by);
    open.all.push_back(std::move(library).value());
  }
  label_libraries(open.pointers());
  return open;
}

}  // namespace

std::vector<Library*> OpenLibraries::pointers() {
  std::vector<Library*> each;
  for (auto& library : all) each.push_back(&library);
  return each;
}

Result<OpenLibraries> open_libraries(const std::vector<std::string>& named) {
  if (!named.empty()) return open_all(named, "--library");
  const auto from_environment = parts_of(variable("SHEAF_LIBRARY"));
  if (!from_environment.empty()) return open_all(from_environment, "SHEAF_LIBRARY");
  std::string tried;
  for (const auto& folder : folders()) {
    const auto paths = libraries_in(folder);
    if (!paths.empty()) return open_all(paths, folder);
    tried += (tried.empty() ? "" : ", ") + folder;
  }
  return Failure{"no library found: no --library, no SHEAF_LIBRARY, no *.sheaf in " + tried +
                 "; make one with sheafc build specs-yaml -o orrindale.sheaf"};
}

}  // namespace sheaf
