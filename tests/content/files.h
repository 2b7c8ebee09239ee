// SPDX-License-Identifier: GPL-2.0-or-later
// Whole files as strings.
#pragma once

#include <fstream>
#include <iterator>
#include <string>
#include <string_view>

namespace sheaf::test {

inline std::string read_file(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

inline void write_file(const std::string& path, std::string_view bytes) {
  std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

}  // namespace sheaf::test
