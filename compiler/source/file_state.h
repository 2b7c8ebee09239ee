// SPDX-License-Identifier: GPL-2.0-or-later
// Whether a file is still what it was, without reading it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

namespace sheafc {

// What the system says of a file. `settled` is whether its last change lay far enough back, when it was
// looked at, that another one would show: clocks of files are coarse.
struct FileState {
  std::uint64_t device = 0, inode = 0, bytes = 0;
  std::int64_t modified_ns = 0, changed_ns = 0;
  bool settled = false;
};

// None if it cannot be looked at, or is no plain file.
std::optional<FileState> state_of(const std::string& path);

// True only if it cannot have changed between the two looks.
bool surely_unchanged(const FileState& before, const FileState& now);

}  // namespace sheafc
