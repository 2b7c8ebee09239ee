// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/row_checksum.h"

#include <string>

#include "query/library/hash.h"

namespace sheaf {
namespace {

void append(std::string& bytes, std::uint64_t number) {
  for (int i = 0; i < 8; ++i) bytes += static_cast<char>(number >> 8 * i & 0xFF);
}

}  // namespace

std::int64_t row_checksum(std::initializer_list<std::int64_t> numbers,
                          std::initializer_list<std::string_view> texts) {
  std::string bytes;
  bytes.reserve(1024);  // more than most rows need
  for (const std::int64_t number : numbers) append(bytes, static_cast<std::uint64_t>(number));
  for (const std::string_view text : texts) {
    append(bytes, text.size());
    bytes += text;
  }
  return static_cast<std::int64_t>(hash_of(bytes));
}

}  // namespace sheaf
