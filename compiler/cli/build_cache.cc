// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/build_cache.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <system_error>

#include "query/library/file_descriptor.h"
#include "query/library/hash.h"
#include "query/library/whole_file.h"

namespace sheafc {
namespace {

namespace fs = std::filesystem;

// An unset, empty or relative folder is none, as the base directory specification says.
std::string cache_home() {
  const auto variable = [](const char* name) {
    const char* value = std::getenv(name);
    return value && *value == '/' ? std::string(value) : std::string();
  };
  if (std::string home = variable("XDG_CACHE_HOME"); !home.empty()) return home;
  const std::string user = variable("HOME");
  return user.empty() ? "" : user + "/.cache";
}

// In each folder, the path of its library.
constexpr const char* of_library = "library";
constexpr std::size_t longest_path = 1 << 16;

std::string library_of(const fs::path& folder) {
  const auto path = sheaf::read_file((folder / of_library).string(), longest_path);
  return path && *path ? **path : std::string();
}

void remove_forsaken(const fs::path& home, const std::string& but_for) {
  std::error_code error;
  for (fs::directory_iterator entry(home, error), end; !error && entry != end; entry.increment(error)) {
    const std::string library = library_of(entry->path());
    std::error_code ignored;
    if (!library.empty() && library != but_for && !fs::exists(library, ignored))
      fs::remove_all(entry->path(), ignored);
  }
}

// What stands in the way makes for no cache, and for no fault.
std::string make_folder(const std::string& home, const std::string& library) {
  std::error_code error;
  fs::create_directories(fs::path(home).parent_path(), error);
  ::mkdir(home.c_str(), 0700);
  remove_forsaken(home, library);
  const std::string folder = home + '/' + sheaf::to_hexadecimal(sheaf::hash_of(library));
  ::mkdir(folder.c_str(), 0700);
  if (::access(folder.c_str(), W_OK | X_OK) != 0) return {};
  const bool known = library_of(folder) == library;
  return known || !sheaf::replace_file(folder + '/' + of_library, library) ? folder : std::string();
}

// In pieces: with what debuggers want in it, a program is larger than all else that a short build reads.
std::string hash_of_program() {
  const sheaf::FileDescriptor program(::open("/proc/self/exe", O_RDONLY | O_CLOEXEC));
  struct stat facts {};
  if (program.number() < 0 || ::fstat(program.number(), &facts) != 0) return SHEAF_VERSION;
  sheaf::HashOfPieces hash;
  const auto fault = sheaf::read_range(program.number(), 0, static_cast<std::uint64_t>(facts.st_size),
                                       sheaf::hashed_piece, [&](std::string_view piece) { hash.add(piece); });
  return fault ? SHEAF_VERSION : sheaf::to_hexadecimal(hash.finish());
}

}  // namespace

std::string cache_folder_for(const std::string& library) {
  const std::string home = cache_home();
  std::error_code error;
  const fs::path path = fs::weakly_canonical(fs::absolute(library, error), error);
  return home.empty() || error ? "" : make_folder(home + "/sheaf", path.string());
}

const std::string& program_identity() {
  static const std::string identity = hash_of_program();
  return identity;
}

}  // namespace sheafc
