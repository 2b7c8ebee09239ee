// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/write_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>

#include "compiler/source/file_words.h"

namespace sheafc {
namespace {

sheaf::Failure failure(const std::string& what, int error) { return {what + ": " + words_for_errno(error)}; }

bool write_all(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(descriptor, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

// A new file beside the target; removed again unless it was renamed.
class Draft {
 public:
  explicit Draft(const std::string& target)
      : path_(target + ".new-XXXXXX"), descriptor_(::mkstemp(path_.data())) {}
  Draft(const Draft&) = delete;
  Draft& operator=(const Draft&) = delete;
  ~Draft() {
    if (descriptor_ >= 0) ::close(descriptor_);
    if (!path_.empty()) ::unlink(path_.c_str());
  }

  bool opened() const { return descriptor_ >= 0; }
  bool fill(std::string_view text, mode_t mode) {
    return write_all(descriptor_, text) && ::fchmod(descriptor_, mode) == 0 && ::fsync(descriptor_) == 0;
  }
  bool put_in_place(const std::string& target, bool replace) {
    const int done =
        replace ? ::rename(path_.c_str(), target.c_str()) : ::link(path_.c_str(), target.c_str());
    if (replace && done == 0) path_.clear();
    return done == 0;
  }

 private:
  std::string path_;
  int descriptor_;
};

std::optional<sheaf::Failure> put(const std::string& path, std::string_view text, mode_t mode, bool replace) {
  Draft draft(path);
  if (!draft.opened()) return failure("cannot write beside " + path, errno);
  if (!draft.fill(text, mode)) return failure("cannot write " + path, errno);
  if (!draft.put_in_place(path, replace)) return failure("cannot write " + path, errno);
  return {};
}

}  // namespace

std::optional<sheaf::Failure> replace_file(const std::string& path, std::string_view text) {
  std::error_code unresolved;
  const std::filesystem::path real = std::filesystem::canonical(path, unresolved);
  const std::string target = unresolved ? path : real.string();
  struct stat now {};
  const mode_t mode = ::stat(target.c_str(), &now) == 0 ? now.st_mode & 07777 : 0644;
  return put(target, text, mode, true);
}

std::optional<sheaf::Failure> create_file(const std::string& path, std::string_view text) {
  return put(path, text, 0644, false);
}

}  // namespace sheafc
