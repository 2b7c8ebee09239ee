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

// Whether a bare whole number before these threads per inch, or this series, is a size by number (ASME B1.1): "10" in
// "10-32" is, "1" in "1-8" is an inch. Number sizes end at 12 and are all fine.
bool is_number_size(const Number& size, const Thread& thread);

}  // namespace sheaf
