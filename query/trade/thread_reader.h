// SPDX-License-Identifier: GPL-2.0-or-later
// The grammar of threads. Internal to trade: what people use stands in thread.h.
#pragma once

#include "query/trade/reader.h"
#include "query/trade/thread.h"

namespace sheaf {

// The longest thread from where the reader stands; it is left behind the thread, or anywhere on failure.
Result<Thread> read_thread(Reader& reader, Input input);

// The same after the M of a metric thread.
Result<Thread> read_metric(Reader& reader, Input input);

}  // namespace sheaf
