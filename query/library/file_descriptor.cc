// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/file_descriptor.h"

#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <system_error>
#include <utility>

namespace sheaf {

FileDescriptor& FileDescriptor::operator=(FileDescriptor&& other) noexcept {
  if (number_ >= 0) ::close(number_);
  number_ = other.release();
  return *this;
}

FileDescriptor::~FileDescriptor() {
  if (number_ >= 0) ::close(number_);
}

int FileDescriptor::release() { return std::exchange(number_, -1); }

Failure system_failure() { return Failure{std::generic_category().message(errno)}; }

namespace {

// How many there were.
Result<std::size_t> read_into(char* bytes, int descriptor, std::uint64_t offset, std::size_t count) {
  std::size_t done = 0;
  while (done < count) {
    const ssize_t got = ::pread(descriptor, bytes + done, count - done, static_cast<off_t>(offset + done));
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return system_failure();
    if (got == 0) break;
    done += static_cast<std::size_t>(got);
  }
  return done;
}

}  // namespace

Result<std::string> read_at(int descriptor, std::uint64_t offset, std::size_t count) {
  std::string bytes(count, '\0');
  const auto got = read_into(bytes.data(), descriptor, offset, count);
  if (!got) return got.failure();
  bytes.resize(*got);
  return bytes;
}

std::optional<Failure> write_at(int descriptor, std::uint64_t offset, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::pwrite(descriptor, bytes.data(), bytes.size(), static_cast<off_t>(offset));
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return system_failure();
    bytes.remove_prefix(static_cast<std::size_t>(written));
    offset += static_cast<std::uint64_t>(written);
  }
  return std::nullopt;
}

std::optional<Failure> read_range(int descriptor, std::uint64_t from, std::uint64_t to, std::size_t piece,
                                  const std::function<void(std::string_view)>& take) {
  std::string buffer(static_cast<std::size_t>(std::min<std::uint64_t>(piece, to - std::min(from, to))), '\0');
  for (std::uint64_t at = from; at < to; at += piece) {
    const auto wanted = static_cast<std::size_t>(std::min<std::uint64_t>(piece, to - at));
    const auto got = read_into(buffer.data(), descriptor, at, wanted);
    if (!got) return got.failure();
    if (*got < wanted) return Failure{"the file became shorter"};
    take(std::string_view(buffer).substr(0, wanted));
  }
  return std::nullopt;
}

}  // namespace sheaf
