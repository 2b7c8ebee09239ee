// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/sheet_files.h"

#include <dirent.h>
#include <fcntl.h>
#include <sys/stat.h>

#include <algorithm>
#include <cerrno>
#include <memory>
#include <optional>
#include <set>
#include <utility>

#include "query/library/file_descriptor.h"
#include "query/library/file_words.h"

namespace sheafc {
namespace {

using sheaf::Failure;

constexpr int max_folder_depth = 32;

bool ends_with_either(const std::string& name, const char* lower, const char* upper) {
  return name.ends_with(lower) || name.ends_with(upper);
}

// A library begins as every SQLite file does. What cannot be read is said by whoever reads it.
bool is_library(const std::string& path) {
  constexpr std::string_view beginning = "SQLite format 3";
  const sheaf::FileDescriptor file(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC));
  if (file.number() < 0) return false;
  const auto bytes = sheaf::read_at(file.number(), 0, beginning.size());
  return bytes && *bytes == beginning;
}

// Walks the folders below a root, each one once, following symbolic links.
class Walk {
 public:
  std::optional<Failure> folder(const std::string& path, int depth) {
    if (depth > max_folder_depth)
      return Failure{path + " lies more than " + std::to_string(max_folder_depth) + " folders deep"};
    const std::unique_ptr<DIR, int (*)(DIR*)> stream(::opendir(path.c_str()), ::closedir);
    if (!stream) return Failure{path + " cannot be opened: " + sheaf::words_for_errno(errno)};
    std::vector<std::pair<std::string, bool>> names;  // and whether it is a plain file for sure
    errno = 0;
    while (const dirent* entry = ::readdir(stream.get())) {
      if (entry->d_name[0] != '.') names.emplace_back(entry->d_name, entry->d_type == DT_REG);
    }
    if (errno != 0) return Failure{path + " cannot be read: " + sheaf::words_for_errno(errno)};
    std::sort(names.begin(), names.end());
    const std::string beginning = path.ends_with('/') ? path : path + '/';
    for (const auto& [name, is_file] : names) {
      if (auto failure = is_file ? plain_file(beginning + name) : entry(beginning + name, depth))
        return failure;
    }
    return std::nullopt;
  }

  std::optional<Failure> entry(const std::string& path, int depth) {
    const bool is_sheet = path.ends_with(".yaml");
    struct stat status {};
    if (::stat(path.c_str(), &status) != 0) {
      if (is_sheet || errno != ENOENT)
        return Failure{path + " cannot be opened: " + sheaf::words_for_errno(errno)};
      return std::nullopt;  // a link that leads nowhere, and is no sheet
    }
    if (S_ISDIR(status.st_mode)) return enter(path, status, depth);
    if (is_sheet && !S_ISREG(status.st_mode))
      return Failure{path + " is " + sheaf::words_for_kind(status.st_mode) + ", not a file"};
    return plain_file(path);
  }

  std::vector<std::string> sheets;

 private:
  std::optional<Failure> plain_file(const std::string& path) {
    if (path.ends_with(".yaml")) {
      sheets.push_back(path);
    } else if (ends_with_either(path, ".yml", ".YAML") || path.ends_with(".YML")) {
      return Failure{path + " is not read: the name of a sheet ends in .yaml; rename it"};
    }
    return std::nullopt;
  }

  std::optional<Failure> enter(const std::string& path, const struct stat& status, int depth) {
    if (!seen_.insert({status.st_dev, status.st_ino}).second) {
      return Failure{path + " is a symbolic link to a folder that is read already; take it out"};
    }
    return folder(path, depth + 1);
  }

  std::set<std::pair<dev_t, ino_t>> seen_;
};

}  // namespace

sheaf::Result<std::vector<std::string>> list_sheets(const std::string& root) {
  struct stat status {};
  if (::stat(root.c_str(), &status) != 0)
    return Failure{root + " cannot be opened: " + sheaf::words_for_errno(errno)};
  if (S_ISREG(status.st_mode)) {
    if (is_library(root)) return Failure{root + " is a library; give the sheets that it is made from"};
    return std::vector<std::string>{root};
  }
  Walk walk;
  if (auto failure = walk.entry(root, 0)) return *failure;
  std::sort(walk.sheets.begin(), walk.sheets.end());
  return std::move(walk.sheets);
}

}  // namespace sheafc
