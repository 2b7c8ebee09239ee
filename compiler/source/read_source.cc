// SPDX-License-Identifier: GPL-2.0-or-later
// The one place where a sheet comes from the disk.
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <string>

#include "compiler/source/source_file.h"
#include "query/library/file_words.h"

namespace sheafc {
namespace {

class OpenFile {
 public:
  // Without O_NONBLOCK the opening of a named pipe would wait for its writer.
  explicit OpenFile(const std::string& path)
      : number_(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC)) {}
  ~OpenFile() {
    if (number_ >= 0) ::close(number_);
  }
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  int number() const { return number_; }

 private:
  int number_;
};

// One byte more than the limit is enough to know that a file is larger.
bool read_all(int file, std::string& bytes) {
  constexpr std::size_t most = max_file_bytes + 4;  // the limit, a byte order mark, and one byte
  std::size_t filled = 0;
  while (filled < most) {
    if (filled == bytes.size()) bytes.resize(std::min(most, bytes.size() + (1u << 16)));
    const ssize_t got = ::read(file, bytes.data() + filled, bytes.size() - filled);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return false;
    if (got == 0) break;
    filled += static_cast<std::size_t>(got);
  }
  bytes.resize(filled);
  return true;
}

}  // namespace

sheaf::Result<SourceFile> read_source(const std::string& path, std::string shown_name) {
  const OpenFile file(path);
  if (file.number() < 0)
    return sheaf::Failure{shown_name + " cannot be opened: " + sheaf::words_for_errno(errno)};
  struct stat status {};
  if (::fstat(file.number(), &status) != 0)
    return sheaf::Failure{shown_name + " cannot be read: " + sheaf::words_for_errno(errno)};
  if (!S_ISREG(status.st_mode)) {
    return sheaf::Failure{shown_name + " is " + sheaf::words_for_kind(status.st_mode) + ", not a file"};
  }
  std::string bytes(static_cast<std::size_t>(std::min<off_t>(status.st_size + 1, max_file_bytes + 4)), '\0');
  if (!read_all(file.number(), bytes))
    return sheaf::Failure{shown_name + " cannot be read: " + sheaf::words_for_errno(errno)};
  return SourceFile(shown_name, std::move(bytes));
}

}  // namespace sheafc
