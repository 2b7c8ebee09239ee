// SPDX-License-Identifier: GPL-2.0-or-later
// Whether an entry, read whole, really is what the question asks. The index brings candidates; these
// are the last word on machine, year, frame, market and thread. Internal to search.
#pragma once

#include <string>

#include "query/search/reading.h"

namespace sheaf {

bool fits_machine(const EntryRecord& entry, const QuestionReading& reading, bool with_year);
// Whether it states frame numbers, and that which was asked is one of them.
bool states_frame(const FitRecord& fit, const QuestionReading& reading);
bool has_threads_asked(const EntryRecord& entry, const QuestionReading& reading);

}  // namespace sheaf
