// SPDX-License-Identifier: GPL-2.0-or-later
// Tests every block of the index on its way into Xapian, which trusts what it reads: one flipped bit in a
// block could make it read beyond its memory, or name an entry that has not what was asked for. A bad
// block becomes an error of reading, which Xapian reports as it reports any other.
//
// Xapian has no door for this. Its only way to the file is the C library's pread(), so index_guard.cc
// takes the place of that function, and changes it for the guarded descriptors alone. Where that does not
// come to pass (has_seen_reads), check_all() does the same at the price of reading the whole index once.
// Blocks that held are kept for a while: Xapian walks from the root of a tree to its leaf for each list that it
// opens, a thousand times and more a question, and a call of the system takes longer than all else.
// A library is asked by one thread at a time, and so is its guard. Internal to query/library.
#pragma once

#include <sys/types.h>

#include <array>
#include <atomic>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <vector>

#include "query/library/trailer.h"

namespace sheaf {

class IndexGuard {
 public:
  // Guards what is read through this descriptor of a library's file from now on, until it goes away;
  // which it must before the descriptor is closed.
  IndexGuard(int descriptor, const Trailer& trailer);
  ~IndexGuard();
  IndexGuard(const IndexGuard&) = delete;
  IndexGuard& operator=(const IndexGuard&) = delete;

  // As pread() does for this descriptor; fails with EIO where the bytes are not of sound blocks.
  ssize_t read(std::uint64_t offset, char* bytes, std::size_t count) const;
  bool has_seen_reads() const { return has_seen_reads_; }
  bool check_all() const;
  bool first_block_holds() const;  // which Xapian reads in another way

 private:
  ssize_t read_block(std::uint64_t number, char* bytes) const;
  bool blocks_hold(std::uint64_t from, std::uint64_t to) const;  // all that these bytes lie in
  bool block_holds(std::uint64_t number, const char* bytes) const;

  // 512 of the checks, read at once: blocks that are asked for lie near each other.
  static constexpr std::uint64_t checks_a_page = 512;
  using CheckPage = std::array<char, checks_a_page * 8>;
  const CheckPage* check_page(std::uint64_t number) const;

  using Block = std::array<char, index_block>;
  struct KeptBlock {
    std::uint64_t number = 0;
    std::unique_ptr<Block> bytes;  // none before the first
  };

  int descriptor_;
  std::uint64_t begin_, end_, checks_;
  mutable std::vector<std::unique_ptr<CheckPage>> check_pages_;  // once read
  mutable std::array<KeptBlock, 512> kept_;                      // each block has one place, as others have
  mutable std::atomic<bool> has_seen_reads_ = false;
};

}  // namespace sheaf
