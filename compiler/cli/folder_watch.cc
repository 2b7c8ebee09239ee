// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/folder_watch.h"

#include <poll.h>
#include <sys/inotify.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <filesystem>
#include <system_error>
#include <utility>

#include "query/library/file_words.h"

namespace sheafc {
namespace {

namespace fs = std::filesystem;

// Editors write in several steps; a build begins when they have been done for so long.
constexpr int quiet_ms = 60;
constexpr std::uint32_t changes =
    IN_CLOSE_WRITE | IN_CREATE | IN_DELETE | IN_MOVED_FROM | IN_MOVED_TO | IN_DELETE_SELF | IN_ATTRIB;

std::vector<std::string> folders_below(const std::string& path) {
  std::error_code error;
  if (!fs::is_directory(path, error)) {
    const fs::path parent = fs::path(path).parent_path();
    return {parent.empty() ? "." : parent.string()};
  }
  std::vector<std::string> folders = {path};
  fs::recursive_directory_iterator at(path, fs::directory_options::follow_directory_symlink, error), end;
  for (; !error && at != end; at.increment(error)) {
    if (at->is_directory(error)) folders.push_back(at->path().string());
  }
  return folders;
}

void drain(int descriptor) {
  std::array<char, 1 << 14> events;
  while (::read(descriptor, events.data(), events.size()) > 0) continue;
}

}  // namespace

sheaf::Result<FolderWatch> FolderWatch::of(const std::vector<std::string>& paths) {
  FolderWatch watch(::inotify_init1(IN_NONBLOCK | IN_CLOEXEC));
  if (watch.descriptor_ < 0) return sheaf::Failure{"cannot watch files: " + sheaf::words_for_errno(errno)};
  for (const std::string& path : paths) {
    for (const std::string& folder : folders_below(path)) {
      if (::inotify_add_watch(watch.descriptor_, folder.c_str(), changes) < 0 && errno != ENOENT)
        return sheaf::Failure{"cannot watch " + folder + ": " + sheaf::words_for_errno(errno)};
    }
  }
  return watch;
}

FolderWatch::FolderWatch(FolderWatch&& other) noexcept : descriptor_(std::exchange(other.descriptor_, -1)) {}

FolderWatch& FolderWatch::operator=(FolderWatch&& other) noexcept {
  std::swap(descriptor_, other.descriptor_);
  return *this;
}

FolderWatch::~FolderWatch() {
  if (descriptor_ >= 0) ::close(descriptor_);
}

void FolderWatch::wait(const std::atomic<bool>& interrupted) const {
  pollfd events{descriptor_, POLLIN, 0};
  constexpr int look_again_ms = 500;  // a signal may come between the test and the wait
  while (!interrupted && ::poll(&events, 1, look_again_ms) <= 0) continue;
  do drain(descriptor_);
  while (!interrupted && ::poll(&events, 1, quiet_ms) > 0);
}

}  // namespace sheafc
