// SPDX-License-Identifier: GPL-2.0-or-later
// An open file, and reading and writing at any place in it. For query/library and compiler/emit alone.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "query/quantity/result.h"

namespace sheaf {

// Owns the descriptor; -1 is none.
class FileDescriptor {
 public:
  explicit FileDescriptor(int number = -1) : number_(number) {}
  FileDescriptor(FileDescriptor&& other) noexcept : number_(other.release()) {}
  FileDescriptor& operator=(FileDescriptor&& other) noexcept;
  ~FileDescriptor();

  int number() const { return number_; }
  int release();

 private:
  int number_;
};

// What the system says of its last fault.
Failure system_failure();

// As many of the bytes as there are; fewer only at the end of the file.
Result<std::string> read_at(int descriptor, std::uint64_t offset, std::size_t count);

// All of them.
std::optional<Failure> write_at(int descriptor, std::uint64_t offset, std::string_view bytes);

// Hands over that range in pieces of `piece` bytes, the last as long as what is left. Fails if the file
// ends before the range does.
std::optional<Failure> read_range(int descriptor, std::uint64_t from, std::uint64_t to, std::size_t piece,
                                  const std::function<void(std::string_view)>& take);

}  // namespace sheaf
