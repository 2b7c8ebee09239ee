// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/library_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <system_error>
#include <utility>

namespace sheaf {
namespace {

constexpr std::size_t beginning_bytes = 100;  // SQLite's header

// A FIFO must not make us wait for its writer.
int open_for_reading(const std::string& path) {
  return ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
}

}  // namespace

Result<LibraryFile> LibraryFile::open(const std::string& path) {
  LibraryFile file(path, FileDescriptor(open_for_reading(path)));
  if (file.descriptor_.number() < 0) return Failure{"cannot open " + path + ": " + system_failure().message};
  if (auto fault = file.read_ends()) return *fault;
  return file;
}

std::optional<Failure> LibraryFile::read_ends() {
  struct stat status {};
  if (::fstat(descriptor_.number(), &status) != 0) {
    return Failure{"cannot open " + path_ + ": " + system_failure().message};
  }
  if (S_ISDIR(status.st_mode)) return Failure{path_ + " is a folder, and no sheaf library"};
  if (!S_ISREG(status.st_mode)) return Failure{path_ + " is not a regular file, and no sheaf library"};
  device_ = status.st_dev;
  inode_ = status.st_ino;
  const auto bytes = static_cast<std::uint64_t>(status.st_size);
  const auto beginning = read_at(descriptor_.number(), 0, beginning_bytes);
  const auto end =
      read_at(descriptor_.number(), bytes - std::min<std::uint64_t>(bytes, trailer_bytes), trailer_bytes);
  if (!beginning) return Failure{"cannot read " + path_ + ": " + beginning.failure().message};
  if (!end) return Failure{"cannot read " + path_ + ": " + end.failure().message};
  auto trailer = read_trailer(*beginning, *end, bytes);
  if (!trailer) return Failure{path_ + ' ' + trailer.failure().message};
  trailer_ = *trailer;
  return std::nullopt;
}

FileDescriptor LibraryFile::reopen_at_index() const {
  FileDescriptor again(open_for_reading(path_));
  struct stat status {};
  if (again.number() < 0 || ::fstat(again.number(), &status) != 0) return FileDescriptor();
  if (status.st_dev != device_ || status.st_ino != inode_) return FileDescriptor();
  if (::lseek(again.number(), static_cast<off_t>(trailer_.index_offset), SEEK_SET) < 0) {
    return FileDescriptor();
  }
  return again;
}

bool LibraryFile::is_in_place() const {
  struct stat status {};
  return ::stat(path_.c_str(), &status) == 0 && status.st_dev == device_ && status.st_ino == inode_;
}

std::optional<Failure> LibraryFile::read_content(const std::function<void(std::string_view)>& take) const {
  const auto fault = read_range(descriptor_.number(), 0, trailer_.file_bytes - trailer_bytes, 1 << 20, take);
  if (fault) return Failure{"cannot read " + path_ + ": " + fault->message};
  return std::nullopt;
}

}  // namespace sheaf
