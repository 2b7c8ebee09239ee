// SPDX-License-Identifier: GPL-2.0-or-later
// While it lives, a write beyond the limit of file sizes is an error, and not the end of the process.
#pragma once

#include <csignal>

namespace sheafc {

// For this thread and for those it starts meanwhile.
class FileLimitGuard {
 public:
  FileLimitGuard();
  ~FileLimitGuard();
  FileLimitGuard(const FileLimitGuard&) = delete;
  FileLimitGuard& operator=(const FileLimitGuard&) = delete;

 private:
  sigset_t before_{};
};

}  // namespace sheafc
