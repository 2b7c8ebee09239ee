// SPDX-License-Identifier: GPL-2.0-or-later
// Each thread takes the next thing that nobody has taken: sheets differ in size.
#include "compiler/sheet/parallel.h"

#include <algorithm>
#include <atomic>
#include <thread>
#include <vector>

namespace sheafc {

void for_all(std::size_t count, const std::function<void(std::size_t)>& work, unsigned threads) {
  constexpr std::size_t worth_a_thread = 4;
  if (threads == 0) threads = std::max(1U, std::thread::hardware_concurrency());
  const std::size_t useful = std::min<std::size_t>(threads, count / worth_a_thread);
  std::atomic<std::size_t> next{0};
  const auto take = [&] {
    for (std::size_t i = next++; i < count; i = next++) work(i);
  };
  std::vector<std::jthread> helpers;
  for (std::size_t i = 1; i < useful; ++i) helpers.emplace_back(take);
  take();
}

}  // namespace sheafc
