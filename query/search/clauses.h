// SPDX-License-Identifier: GPL-2.0-or-later
// The clauses of a question, which commas, full stops and dashes part. Internal to search.
#pragma once

#include <cstddef>

#include "query/search/draft.h"

namespace sheaf {

struct Clause {
  std::size_t begin = 0, end = 0;  // tokens
};

// The last one that begins with what it asks; else the last that asks at all. Empty where none does.
Clause asking_clause(const Draft& draft);

// Where the clause that asks names a part, the parts of the others only say where or when.
void read_contexts(Draft& draft);

}  // namespace sheaf
