// SPDX-License-Identifier: GPL-2.0-or-later
// The floor under reading and checking sheets: the events of the same files, by the same parser, with
// nothing done about them.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace sheaf::bench {

// The number of events. Files are shared out among so many threads.
std::size_t parse_bare(const std::vector<std::string>& paths, unsigned threads);

}  // namespace sheaf::bench
