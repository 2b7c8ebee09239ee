// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/cli/heap.h"

#include <malloc.h>
#include <sys/mman.h>
#include <unistd.h>

#include <cstdint>
#include <cstdlib>

namespace sheaf {
namespace {

constexpr std::size_t ordinary = 1'500'000;  // bytes; a question about a machine of a fleet touches 1.2 to 1.6 MB
constexpr int kept = 8'000'000;              // bytes free at the top of the heap, from which on they are given back
constexpr int mapped_alone = 4'000'000;      // bytes; what is larger is no part of the heap

}  // namespace

void prepare_heap() {
  ::mallopt(M_TRIM_THRESHOLD, kept);
  ::mallopt(M_MMAP_THRESHOLD, mapped_alone);
  void* const room = std::malloc(ordinary);
  if (!room) return;
#ifdef MADV_POPULATE_WRITE  // Linux 5.14; before, the call fails and nothing is lost
  const auto page = static_cast<std::uintptr_t>(::sysconf(_SC_PAGESIZE));
  const auto begin = (reinterpret_cast<std::uintptr_t>(room) + page - 1) / page * page;
  const auto end = (reinterpret_cast<std::uintptr_t>(room) + ordinary) / page * page;
  ::madvise(reinterpret_cast<void*>(begin), end - begin, MADV_POPULATE_WRITE);
#endif
  std::free(room);
}

}  // namespace sheaf
