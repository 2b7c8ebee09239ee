// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/cli/keep_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

namespace sheaf {
namespace {

Failure failure(const std::string& what) { return Failure{what + ": " + std::strerror(errno)}; }

bool write_all(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(descriptor, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  int number() const { return number_; }
  bool is_open() const { return number_ >= 0; }

 private:
  int number_;
};

// A new file beside the target; removed again unless it was put in its place.
class Draft {
 public:
  explicit Draft(const std::string& target)
      : path_(target + ".new-XXXXXX"), descriptor_(::mkostemp(path_.data(), O_CLOEXEC)) {}
  Draft(const Draft&) = delete;
  Draft& operator=(const Draft&) = delete;
  ~Draft() {
    if (descriptor_.is_open() && !path_.empty()) ::unlink(path_.c_str());
  }

  bool is_open() const { return descriptor_.is_open(); }
  bool fill(std::string_view text, mode_t mode) {
    return write_all(descriptor_.number(), text) && ::fchmod(descriptor_.number(), mode) == 0 &&
           ::fsync(descriptor_.number()) == 0;
  }
  bool put_in_place_of(const std::string& target) {
    if (::rename(path_.c_str(), target.c_str()) != 0) return false;
    path_.clear();
    return true;
  }

 private:
  std::string path_;
  Descriptor descriptor_;
};

void sync_folder_of(const std::string& path) {
  const auto folder = std::filesystem::path(path).parent_path();
  const Descriptor open(::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (open.is_open()) ::fsync(open.number());  // not every file system can; the file itself is safe
}

}  // namespace

std::optional<Failure> keep_file(const std::string& path, std::string_view text) {
  std::error_code unresolved;
  const auto real = std::filesystem::canonical(path, unresolved);
  const std::string target = unresolved ? path : real.string();
  struct stat now {};
  const mode_t mode = ::stat(target.c_str(), &now) == 0 ? now.st_mode & 07777 : 0644;
  Draft draft(target);
  if (!draft.is_open()) return failure("cannot write beside " + path);
  if (!draft.fill(text, mode) || !draft.put_in_place_of(target)) return failure("cannot write " + path);
  sync_folder_of(target);
  return std::nullopt;
}

Result<std::optional<std::string>> read_file(const std::string& path, std::size_t most) {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  if (!file.is_open() && errno == ENOENT) return std::optional<std::string>();
  if (!file.is_open()) return failure("cannot read " + path);
  struct stat facts {};
  if (::fstat(file.number(), &facts) != 0) return failure("cannot read " + path);
  if (!S_ISREG(facts.st_mode)) return Failure{path + " is no plain file"};
  std::string text;
  char block[1 << 14];
  for (;;) {
    const ssize_t got = ::read(file.number(), block, sizeof block);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return failure("cannot read " + path);
    if (got == 0) return std::optional(std::move(text));
    text.append(block, static_cast<std::size_t>(got));
    if (text.size() > most) return Failure{path + " is too long to be what it should be"};
  }
}

}  // namespace sheaf
