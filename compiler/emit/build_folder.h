// SPDX-License-Identifier: GPL-2.0-or-later
// A folder beside the target in which a library is put together. Its owner holds a lock in it, which the
// system lets go of when the owner dies, however that happens: so a folder that can be locked is stale.
#pragma once

#include <string>

#include "query/quantity/result.h"

namespace sheafc {

class BuildFolder {
 public:
  // Follows the target if it is a link. First removes what killed builds to the same target left.
  static sheaf::Result<BuildFolder> beside(const std::string& target);
  BuildFolder(BuildFolder&& other) noexcept;
  BuildFolder& operator=(BuildFolder&&) = delete;
  ~BuildFolder();  // removes it with all that is in it

  const std::string& path() const { return path_; }
  const std::string& target() const { return target_; }  // not a link
  std::string file(const std::string& name) const { return path_ + '/' + name; }

 private:
  BuildFolder(std::string path, std::string target, int lock)
      : path_(std::move(path)), target_(std::move(target)), lock_(lock) {}

  std::string path_;
  std::string target_;
  int lock_;
};

}  // namespace sheafc
