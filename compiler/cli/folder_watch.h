// SPDX-License-Identifier: GPL-2.0-or-later
// Waits until something below some folders changes.
#pragma once

#include <atomic>
#include <string>
#include <vector>

#include "query/quantity/result.h"

namespace sheafc {

class FolderWatch {
 public:
  // Watches from now on: every folder below those named, and the folders of files that are named. What
  // changes between this and wait() is not missed.
  static sheaf::Result<FolderWatch> of(const std::vector<std::string>& paths);
  FolderWatch(FolderWatch&& other) noexcept;
  FolderWatch& operator=(FolderWatch&& other) noexcept;
  ~FolderWatch();

  // Until a change has come and no other follows at once, or the flag is set. Nothing says what changed.
  void wait(const std::atomic<bool>& interrupted) const;

 private:
  explicit FolderWatch(int descriptor) : descriptor_(descriptor) {}
  int descriptor_;
};

}  // namespace sheafc
