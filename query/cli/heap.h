// SPDX-License-Identifier: GPL-2.0-or-later
#pragma once

namespace sheaf {

// Asks the system at once for the memory that an ordinary question takes, and keeps what is freed. Without it the heap
// comes page by page, each with a fault of its own, and the top of it is given back and fetched again several times:
// more than half of the faults of a whole `sheaf find`. Fails silently: then it comes page by page.
void prepare_heap();

}  // namespace sheaf
