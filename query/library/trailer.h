// SPDX-License-Identifier: GPL-2.0-or-later
// How the parts of a library file lie in it. From the start: an SQLite database (the rows), zeroes up
// to a multiple of 8 KiB, a Xapian database in one piece (the index), the XXH3 of each 8 KiB block of the
// index (8 bytes each), and the trailer, which ends the file:
//
//   byte  0   length of the rows          8 bytes, as all numbers here little-endian
//   byte  8   offset of the index         8
//   byte 16   length of the index         8, a multiple of 8 KiB
//   byte 24   length of the whole file    8
//   byte 32   SHA-256 of all before it   32
//   byte 64   XXH3 of the trailer, with these 8 bytes as 0
//   byte 72   0                           4
//   byte 76   format                      4
//   byte 80   magic                      16
//
// A later format may have another trailer; its last 20 bytes will still be these.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "query/library/hash.h"
#include "query/quantity/result.h"

namespace sheaf {

inline constexpr std::uint32_t library_format = 5;
inline constexpr std::size_t trailer_bytes = 96;
inline constexpr std::uint64_t index_block = 8192;  // bytes, and the alignment of the index
// In the header of the SQLite part, so that any tool can tell whose file it is: "Shea".
inline constexpr std::int32_t application_id = 0x53686561;

struct Trailer {
  std::uint64_t rows_bytes = 0;
  std::uint64_t index_offset = 0;
  std::uint64_t index_bytes = 0;
  std::uint64_t file_bytes = 0;
  Digest digest{};

  std::uint64_t block_checks_offset() const { return index_offset + index_bytes; }
};

std::string to_bytes(const Trailer& trailer);

// What is kept for a block of the index.
std::string block_check(std::string_view block);

// From the first 100 and the last 96 bytes of a file of that size. The Failure says what is wrong with
// it, to follow its name: "is no sheaf library", "was cut off or damaged", "has format 2; ...".
Result<Trailer> read_trailer(std::string_view beginning, std::string_view end, std::uint64_t file_bytes);

}  // namespace sheaf
