// SPDX-License-Identifier: GPL-2.0-or-later
// Filters of a request put into its reading. Internal to search.
#pragma once

#include <optional>

#include "query/search/find.h"

namespace sheaf {

// A Failure that names the filter's value if it cannot be understood.
std::optional<Failure> apply_filters(const Filters& filters, QuestionReading& reading, Lexicon& lexicon);

}  // namespace sheaf
