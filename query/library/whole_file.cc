// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/whole_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <filesystem>

#include "query/library/file_descriptor.h"
#include "query/library/file_words.h"

namespace sheaf {
namespace {

Failure failure(const std::string& what) { return Failure{what + ": " + words_for_errno(errno)}; }

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
      : path_(target + ".new-XXXXXX"), file_(::mkostemp(path_.data(), O_CLOEXEC)) {}
  Draft(const Draft&) = delete;
  Draft& operator=(const Draft&) = delete;
  ~Draft() {
    if (is_open() && !path_.empty()) ::unlink(path_.c_str());
  }

  bool is_open() const { return file_.number() >= 0; }
  bool fill(std::string_view text, mode_t mode) {
    return write_all(file_.number(), text) && ::fchmod(file_.number(), mode) == 0 &&
           ::fsync(file_.number()) == 0;
  }
  bool put_in_place(const std::string& target, bool replace) {
    if (!replace) return ::link(path_.c_str(), target.c_str()) == 0;
    if (::rename(path_.c_str(), target.c_str()) != 0) return false;
    path_.clear();
    return true;
  }

 private:
  std::string path_;
  FileDescriptor file_;
};

void sync_folder_of(const std::string& path) {
  const auto folder = std::filesystem::path(path).parent_path();
  const FileDescriptor open(
      ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (open.number() >= 0) ::fsync(open.number());  // not every file system can; the file itself is safe
}

std::optional<Failure> put(const std::string& path, const std::string& target, std::string_view text,
                           mode_t mode, bool replace) {
  Draft draft(target);
  if (!draft.is_open()) return failure("cannot write beside " + path);
  if (!draft.fill(text, mode) || !draft.put_in_place(target, replace)) return failure("cannot write " + path);
  sync_folder_of(target);
  return std::nullopt;
}

}  // namespace

std::optional<Failure> replace_file(const std::string& path, std::string_view text) {
  std::error_code unresolved;
  const auto real = std::filesystem::canonical(path, unresolved);
  const std::string target = unresolved ? path : real.string();
  struct stat now {};
  const mode_t mode = ::stat(target.c_str(), &now) == 0 ? now.st_mode & 07777 : 0644;
  return put(path, target, text, mode, true);
}

std::optional<Failure> create_file(const std::string& path, std::string_view text) {
  return put(path, path, text, 0644, false);
}

Result<std::optional<std::string>> read_file(const std::string& path, std::size_t most) {
  const FileDescriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  if (file.number() < 0 && errno == ENOENT) return std::optional<std::string>();
  struct stat facts {};
  if (file.number() < 0 || ::fstat(file.number(), &facts) != 0) return failure("cannot read " + path);
  if (!S_ISREG(facts.st_mode)) return Failure{path + " is no plain file"};
  if (static_cast<std::uint64_t>(facts.st_size) > most)
    return Failure{path + " is too long to be what it should be"};
  auto text = read_at(file.number(), 0, static_cast<std::size_t>(facts.st_size));
  if (!text) return Failure{"cannot read " + path + ": " + text.failure().message};
  return std::optional(std::move(text).value());
}

}  // namespace sheaf
