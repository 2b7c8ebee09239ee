// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/index_guard.h"

#include <sys/syscall.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <string_view>

namespace sheaf {
namespace {

// By number of the descriptor. One beyond these is not guarded, and so its index is read at once.
constinit std::array<std::atomic<const IndexGuard*>, 4096> guards{};

const IndexGuard* guard_of(int descriptor) {
  const auto number = static_cast<std::size_t>(descriptor);
  return descriptor >= 0 && number < guards.size() ? guards[number].load(std::memory_order_acquire) : nullptr;
}

void set_guard(int descriptor, const IndexGuard* guard) {
  const auto number = static_cast<std::size_t>(descriptor);
  if (descriptor >= 0 && number < guards.size()) guards[number].store(guard, std::memory_order_release);
}

ssize_t read_unguarded(int descriptor, void* bytes, std::size_t count, std::uint64_t offset) {
  return syscall(SYS_pread64, descriptor, bytes, count, static_cast<long>(offset));
}

// Whether that many bytes were read; a block that is interrupted or cut off is not sound.
bool read_whole(int descriptor, char* bytes, std::size_t count, std::uint64_t offset) {
  return read_unguarded(descriptor, bytes, count, offset) == static_cast<ssize_t>(count);
}

}  // namespace

IndexGuard::IndexGuard(int descriptor, const Trailer& trailer)
    : descriptor_(descriptor),
      begin_(trailer.index_offset),
      end_(trailer.index_offset + trailer.index_bytes),
      checks_(trailer.block_checks_offset()) {
  set_guard(descriptor_, this);
}

IndexGuard::~IndexGuard() { set_guard(descriptor_, nullptr); }

const IndexGuard::CheckPage* IndexGuard::check_page(std::uint64_t number) const {
  const std::uint64_t checks = (end_ - begin_) / index_block;
  const std::uint64_t first = number * checks_a_page;
  if (check_pages_.empty()) check_pages_.resize(checks / checks_a_page + 1);
  auto& page = check_pages_[number];
  if (page) return page.get();
  auto read = std::make_unique<CheckPage>();
  const std::size_t bytes = 8 * std::min(checks_a_page, checks - first);
  if (!read_whole(descriptor_, read->data(), bytes, checks_ + first * 8)) return nullptr;
  page = std::move(read);
  return page.get();
}

bool IndexGuard::block_holds(std::uint64_t number, const char* bytes) const {
  const CheckPage* page = check_page(number / checks_a_page);
  return page && block_check({bytes, index_block}) ==
                     std::string_view(page->data() + 8 * (number % checks_a_page), 8);
}

bool IndexGuard::blocks_hold(std::uint64_t from, std::uint64_t to) const {
  Block block;
  for (std::uint64_t number = (from - begin_) / index_block; begin_ + number * index_block < to; ++number) {
    const std::uint64_t offset = begin_ + number * index_block;
    if (!read_whole(descriptor_, block.data(), block.size(), offset) || !block_holds(number, block.data()))
      return false;
  }
  return true;
}

ssize_t IndexGuard::read_block(std::uint64_t number, char* bytes) const {
  auto& [kept_number, kept] = kept_[number % kept_.size()];
  if (!kept || kept_number != number) {
    if (!kept) kept = std::make_unique_for_overwrite<Block>();
    kept_number = number;
    const std::uint64_t offset = begin_ + number * index_block;
    if (!read_whole(descriptor_, kept->data(), kept->size(), offset) || !block_holds(number, kept->data())) {
      kept.reset();
      errno = EIO;
      return -1;
    }
  }
  std::ranges::copy(*kept, bytes);
  return index_block;
}

ssize_t IndexGuard::read(std::uint64_t offset, char* bytes, std::size_t count) const {
  has_seen_reads_.store(true, std::memory_order_relaxed);
  const bool is_within = offset >= begin_ && offset + count <= end_;
  if (is_within && count == index_block && (offset - begin_) % index_block == 0)  // as Xapian reads
    return read_block((offset - begin_) / index_block, bytes);
  const ssize_t got = read_unguarded(descriptor_, bytes, count, offset);
  if (got <= 0 || (is_within && blocks_hold(offset, offset + static_cast<std::uint64_t>(got)))) return got;
  errno = EIO;
  return -1;
}

bool IndexGuard::check_all() const { return blocks_hold(begin_, end_); }

bool IndexGuard::first_block_holds() const { return end_ > begin_ && blocks_hold(begin_, begin_ + 1); }

}  // namespace sheaf

#if defined(__linux__) && defined(__LP64__)
extern "C" {
ssize_t sheaf_guarded_pread(int descriptor, void* bytes, std::size_t count, off_t offset) asm("pread");
}

// Every call of pread() in the program comes here.
ssize_t sheaf_guarded_pread(int descriptor, void* bytes, std::size_t count, off_t offset) {
  const sheaf::IndexGuard* guard = sheaf::guard_of(descriptor);
  const auto from = static_cast<std::uint64_t>(offset);
  return guard ? guard->read(from, static_cast<char*>(bytes), count)
               : sheaf::read_unguarded(descriptor, bytes, count, from);
}
#endif
