// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/emit/build_folder.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <system_error>
#include <utility>

namespace sheafc {
namespace {

namespace fs = std::filesystem;
using sheaf::Failure;
using sheaf::Result;

std::string message_of(int error) { return std::generic_category().message(error); }

// Where the library goes in the end: the file that a chain of links leads to.
Result<fs::path> place_of(const std::string& target) {
  std::error_code error;
  fs::path place = target;
  const fs::file_status status = fs::status(place, error);
  if (fs::is_directory(status)) return Failure{"cannot write " + target + ": it is a folder"};
  if (fs::exists(status) && !fs::is_regular_file(status)) {
    return Failure{"cannot write " + target + ": it is not a regular file"};
  }
  if (fs::exists(status) && fs::is_symlink(fs::symlink_status(place, error))) {
    place = fs::canonical(place, error);
    if (error) return Failure{"cannot write " + target + ": " + error.message()};
  }
  if (!place.has_filename()) return Failure{"cannot write " + target + ": it names no file"};
  return place;
}

std::string name_before_number(const fs::path& place) { return '.' + place.filename().string() + ".build-"; }

// A lock on the folder, held while the descriptor is open; -1 if somebody else has it, or it is gone. On
// a file in it, not on the folder itself, which shared file systems do not lock.
int lock_folder(const fs::path& folder) {
  const fs::path file = folder / "lock";
  const int descriptor = ::open(file.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0666);
  if (descriptor < 0) return -1;
  struct stat locked {};
  struct stat named {};
  // Between opening and locking, another may have removed it, and a third made it anew.
  if (::flock(descriptor, LOCK_EX | LOCK_NB) == 0 && ::fstat(descriptor, &locked) == 0 &&
      ::stat(file.c_str(), &named) == 0 && locked.st_dev == named.st_dev && locked.st_ino == named.st_ino) {
    return descriptor;
  }
  ::close(descriptor);
  return -1;
}

void remove_stale(const fs::path& parent, const std::string& beginning) {
  std::error_code error;
  for (fs::directory_iterator entry(parent, error), end; !error && entry != end; entry.increment(error)) {
    if (!entry->path().filename().string().starts_with(beginning)) continue;
    if (entry->symlink_status(error).type() != fs::file_type::directory) continue;
    const int lock = lock_folder(entry->path());
    if (lock < 0) continue;
    std::error_code ignored;  // what cannot be removed now is tried again by the next build
    fs::remove_all(entry->path(), ignored);
    ::close(lock);
  }
}

}  // namespace

Result<BuildFolder> BuildFolder::beside(const std::string& target) {
  const auto place = place_of(target);
  if (!place) return place.failure();
  const fs::path parent = place->has_parent_path() ? place->parent_path() : fs::path(".");
  const std::string beginning = name_before_number(*place);
  remove_stale(parent, beginning);
  int error = 0;
  constexpr int most_attempts = 100;  // names taken by other builds of the same process
  for (int attempt = 0; attempt < most_attempts; ++attempt) {
    const fs::path folder = parent / (beginning + std::to_string(::getpid()) + '-' + std::to_string(attempt));
    if (::mkdir(folder.c_str(), 0777) != 0) {
      error = errno;
      if (error == EEXIST) continue;
      break;
    }
    const int lock = lock_folder(folder);
    if (lock >= 0) return BuildFolder(folder.string(), place->string(), lock);
    error = errno;
    ::rmdir(folder.c_str());  // unless somebody else has it now
  }
  return Failure{"cannot write in " + parent.string() + ": " + message_of(error)};
}

BuildFolder::BuildFolder(BuildFolder&& other) noexcept
    : path_(std::exchange(other.path_, {})),
      target_(std::move(other.target_)),
      lock_(std::exchange(other.lock_, -1)) {}

BuildFolder::~BuildFolder() {
  if (lock_ < 0) return;
  std::error_code ignored;
  fs::remove_all(path_, ignored);
  ::close(lock_);
}

}  // namespace sheafc
