// SPDX-License-Identifier: GPL-2.0-or-later
// What a question needs of memory, asked for at once. A program that is started for one question spends much of its
// time on pages that it touches for the first time, one interruption of it each. Where the system cannot do so, nothing
// is lost.
#include <malloc.h>
#include <sys/mman.h>
#include <unistd.h>

#include <cstdint>
#include <cstdlib>

// Where the linker puts the program.
extern "C" const char __executable_start, etext;

namespace sheaf {
namespace {

constexpr std::size_t ordinary = 800'000;  // bytes; a question about a machine touches 0.5 to 0.6 MB
constexpr int kept = 8'000'000;  // bytes free at the top of the heap, from which on they are given back
constexpr int mapped_alone = 4'000'000;  // bytes; what is larger is no part of the heap

#ifdef MADV_POPULATE_READ  // Linux 5.14; before, the call fails
// The whole pages between the two.
void touch(const void* from, const void* to, int how) {
  const auto page = static_cast<std::uintptr_t>(::sysconf(_SC_PAGESIZE));
  const auto begin = (reinterpret_cast<std::uintptr_t>(from) + page - 1) / page * page;
  const auto end = reinterpret_cast<std::uintptr_t>(to) / page * page;
  if (begin < end) ::madvise(reinterpret_cast<void*>(begin), end - begin, how);
}
#else
constexpr int MADV_POPULATE_READ = 0, MADV_POPULATE_WRITE = 0;
void touch(const void*, const void*, int) {}
#endif

// Before the program's own objects are made, which lie in pages of their own.
[[gnu::constructor(101)]] void prepare_memory() {
  touch(&__executable_start, &etext, MADV_POPULATE_READ);
  ::mallopt(M_TRIM_THRESHOLD, kept);
  ::mallopt(M_MMAP_THRESHOLD, mapped_alone);
  char* const room = static_cast<char*>(std::malloc(ordinary));
  if (!room) return;
  touch(room, room + ordinary, MADV_POPULATE_WRITE);
  std::free(room);
}

}  // namespace
}  // namespace sheaf
