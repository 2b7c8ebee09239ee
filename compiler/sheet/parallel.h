// SPDX-License-Identifier: GPL-2.0-or-later
// The same work on many things, on all cores. The work on one thing must touch nothing of another's;
// the order in which it runs shows in no output.
#pragma once

#include <cstddef>
#include <functional>

namespace sheafc {

// Calls work(0) ... work(count - 1), each once; returns when all are done. `threads` 0: one a core.
void for_all(std::size_t count, const std::function<void(std::size_t)>& work, unsigned threads = 0);

}  // namespace sheafc
