// SPDX-License-Identifier: GPL-2.0-or-later
// The file itself: that it is a whole library of our format, and that every further opening of its path
// is the same file, not one that has just replaced it. Internal to query/library.
#pragma once

#include <sys/types.h>

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "query/library/file_descriptor.h"
#include "query/library/trailer.h"
#include "query/quantity/result.h"

namespace sheaf {

class LibraryFile {
 public:
  // Reads its beginning and its end. Failures begin with the path.
  static Result<LibraryFile> open(const std::string& path);

  const std::string& path() const { return path_; }
  const Trailer& trailer() const { return trailer_; }

  // Another descriptor for the same file, at the start of the index. Number -1 if the path now names
  // another file, or none.
  FileDescriptor reopen_at_index() const;
  // Whether the path still names this file.
  bool is_in_place() const;

  // Every byte before the trailer, in order.
  std::optional<Failure> read_content(const std::function<void(std::string_view)>& take) const;

 private:
  LibraryFile(std::string path, FileDescriptor descriptor)
      : path_(std::move(path)), descriptor_(std::move(descriptor)) {}
  std::optional<Failure> read_ends();

  std::string path_;
  FileDescriptor descriptor_;
  dev_t device_ = 0;
  ino_t inode_ = 0;
  Trailer trailer_;
};

}  // namespace sheaf
