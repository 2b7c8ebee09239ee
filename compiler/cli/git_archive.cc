// SPDX-License-Identifier: GPL-2.0-or-later
// git writes the archive to a pipe; its complaints are put in our own words.
#include "compiler/cli/git_archive.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <optional>

extern char** environ;

namespace sheafc {
namespace {

constexpr std::size_t block = 512;
constexpr std::size_t most_bytes = std::size_t{1} << 30;

std::string read_all(int descriptor) {
  std::string bytes;
  char piece[1 << 16];
  for (;;) {
    const ssize_t got = ::read(descriptor, piece, sizeof piece);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0 || bytes.size() > most_bytes) return bytes;
    bytes.append(piece, static_cast<std::size_t>(got));
  }
}

// The output of a program, none if it could not be run or ended with a fault.
std::optional<std::string> output_of(std::vector<std::string> words) {
  int ends[2];
  if (::pipe(ends) != 0) return {};
  std::vector<char*> arguments;
  for (std::string& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
  posix_spawn_file_actions_addclose(&actions, ends[0]);
  posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
  pid_t child = 0;
  const int failed = ::posix_spawnp(&child, arguments.front(), &actions, nullptr, arguments.data(), environ);
  posix_spawn_file_actions_destroy(&actions);
  ::close(ends[1]);
  std::string output = failed ? "" : read_all(ends[0]);
  ::close(ends[0]);
  if (failed) return {};
  int status = 0;
  while (::waitpid(child, &status, 0) < 0 && errno == EINTR) {
  }
  if (!WIFEXITED(status) || WEXITSTATUS(status) != 0) return {};
  return output;
}

std::string_view text_of(std::string_view field) {
  return field.substr(0, std::min(field.find('\0'), field.size()));
}

std::optional<std::size_t> octal(std::string_view field) {
  std::size_t value = 0;
  for (const char c : text_of(field)) {
    if (c == ' ') continue;
    if (c < '0' || c > '7' || value > most_bytes) return {};
    value = value * 8 + static_cast<std::size_t>(c - '0');
  }
  return value;
}

// "27 path=specs-yaml/a.yaml\n"
std::string path_in_pax(std::string_view records) {
  const std::size_t at = records.find(" path=");
  if (at == std::string_view::npos) return {};
  const std::size_t start = at + 6;
  return std::string(records.substr(start, std::min(records.find('\n', start), records.size()) - start));
}

std::string path_in_header(std::string_view header) {
  const std::string name(text_of(header.substr(0, 100)));
  const std::string prefix(text_of(header.substr(345, 155)));
  return prefix.empty() ? name : prefix + "/" + name;
}

}  // namespace

sheaf::Result<std::vector<SheetText>> sheets_in_tar(std::string_view archive, std::string_view folder) {
  const std::string below = folder.empty() || folder == "." ? "" : std::string(folder) + "/";
  std::vector<SheetText> sheets;
  std::string long_path;
  for (std::size_t at = 0; at + block <= archive.size() && archive[at] != '\0';) {
    const std::string_view header = archive.substr(at, block);
    const auto size = octal(header.substr(124, 12));
    at += block;
    if (!size || *size > archive.size() - at) return sheaf::Failure{"the archive is cut off"};
    const std::string_view body = archive.substr(at, *size);
    at += (*size + block - 1) / block * block;
    if (header[156] == 'x') {
      long_path = path_in_pax(body);
    } else {
      const std::string path = long_path.empty() ? path_in_header(header) : std::exchange(long_path, {});
      const bool is_file = header[156] == '0' || header[156] == '\0';
      if (is_file && path.ends_with(".yaml") && path.starts_with(below))
        sheets.push_back({path.substr(below.size()), std::string(body)});
    }
  }
  std::ranges::sort(sheets, {}, &SheetText::path);
  return sheets;
}

sheaf::Result<std::vector<SheetText>> sheets_in_revision(const std::string& revision,
                                                         const std::string& folder) {
  // A revision that begins with a dash would be taken for a flag.
  if (revision.starts_with('-')) return sheaf::Failure{"'" + revision + "' is no revision"};
  const auto archive = output_of({"git", "-C", folder, "archive", "--format=tar", revision, "."});
  if (!archive) return sheaf::Failure{"git has no " + folder + " in revision " + revision};
  return sheets_in_tar(*archive, "");
}

}  // namespace sheafc
