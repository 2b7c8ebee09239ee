// SPDX-License-Identifier: GPL-2.0-or-later
// What a question needs of memory, asked for at once. A program that is started for one question spends much
// of its time on pages that it touches for the first time, one interruption of it each, and in a virtual
// machine a long one. Where the system cannot do so, nothing is lost.
#include <malloc.h>
#include <sys/mman.h>
#include <unistd.h>

#include <cstdint>
#include <cstdlib>

namespace sheaf {
namespace {

constexpr std::uintptr_t large_page = 2 << 20;  // bytes, on x86-64 and on 64-bit ARM
constexpr std::size_t ordinary = 400'000;       // bytes; a question about a machine touches 0.5 to 0.6 MB
constexpr std::size_t beside = 64;              // bytes; what the heap notes beside two pieces of it
constexpr int kept = 8'000'000;  // bytes free at the top of the heap, from which on they are given back
constexpr int mapped_alone = 4'000'000;  // bytes; what is larger is no part of the heap

#ifndef MADV_POPULATE_WRITE  // Linux 5.14; before, the call fails
constexpr int MADV_POPULATE_WRITE = 23;
#endif

std::uintptr_t address(const void* place) { return reinterpret_cast<std::uintptr_t>(place); }

std::uintptr_t rounded_up(std::uintptr_t place, std::uintptr_t to) { return (place + to - 1) / to * to; }

// Of the pages from the one to the other; both are beginnings of pages.
void advise(std::uintptr_t begin, std::uintptr_t end, int what) {
  if (begin < end) ::madvise(reinterpret_cast<void*>(begin), end - begin, what);
}

// Lets the heap go on at the next large page: the room before it is skipped, and never touched. A large page
// is one interruption for all of it, if no part of it was touched before; without large pages, what is
// ordinary is made at once.
void start_heap_in_large_page() {
  ::mallopt(M_TOP_PAD, 2 * large_page);
  const char* const next = static_cast<const char*>(std::malloc(1));
  const std::uintptr_t begin = rounded_up(address(next), large_page);
  const char* const skipped = static_cast<const char*>(std::malloc(begin - address(next) - beside));
  if (!skipped || address(skipped) > begin || begin + large_page > address(::sbrk(0))) return;
  advise(begin, begin + large_page, MADV_HUGEPAGE);
  advise(begin, begin + ordinary, MADV_POPULATE_WRITE);
}

// Before the program's own objects are made, which lie in pages of their own.
[[gnu::constructor(101)]] void prepare_memory() {
  ::mallopt(M_TRIM_THRESHOLD, kept);
  ::mallopt(M_MMAP_THRESHOLD, mapped_alone);
  start_heap_in_large_page();
}

}  // namespace
}  // namespace sheaf
