// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/file_state.h"

#include <sys/stat.h>

#include <algorithm>
#include <chrono>

namespace sheafc {
namespace {

constexpr std::int64_t second = 1'000'000'000;
constexpr std::int64_t coarsest_clock = 2 * second;  // of the file systems in use

std::int64_t nanoseconds(const timespec& time) { return time.tv_sec * second + time.tv_nsec; }

std::int64_t now() {
  return std::chrono::duration_cast<std::chrono::nanoseconds>(
             std::chrono::system_clock::now().time_since_epoch())
      .count();
}

}  // namespace

std::optional<FileState> state_of(const std::string& path) {
  struct stat status {};
  if (::stat(path.c_str(), &status) != 0 || !S_ISREG(status.st_mode)) return std::nullopt;
  FileState state{status.st_dev, status.st_ino, static_cast<std::uint64_t>(status.st_size),
                  nanoseconds(status.st_mtim), nanoseconds(status.st_ctim)};
  state.settled = std::max(state.modified_ns, state.changed_ns) < now() - coarsest_clock;
  return state;
}

bool surely_unchanged(const FileState& before, const FileState& now) {
  return before.settled && before.device == now.device && before.inode == now.inode &&
         before.bytes == now.bytes && before.modified_ns == now.modified_ns &&
         before.changed_ns == now.changed_ns;
}

}  // namespace sheafc
