// SPDX-License-Identifier: GPL-2.0-or-later
// What only a table of threads can say: the pitch that a bare "M8" or "5/16 UNC" means, and whether
// a written pitch exists. The rows come from the published tables among the sheets.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "query/quantity/result.h"
#include "query/trade/thread.h"

namespace sheaf {

struct ThreadRow {
  Thread thread;       // with its pitch
  std::string series;  // "coarse", "fine", "UNC", "UNF"
};

// The thread with its pitch, and for an inch thread its series. A bare metric thread is the coarse
// one. Fails when no row has that diameter, or none of it in the series named.
Result<Thread> completed(const Thread& thread, std::span<const ThreadRow> rows);

// The threads of its diameter, in the order of the rows; none when the table does not have the diameter at all and
// so cannot judge its pitch.
std::vector<Thread> threads_of_diameter(const Thread& thread, std::span<const ThreadRow> rows);

}  // namespace sheaf
