// SPDX-License-Identifier: GPL-2.0-or-later
// What the index brings for a plan: the numbers of the entries to read, and how many more there are.
// Internal to search.
#pragma once

#include <cstddef>
#include <vector>

#include "query/library/index.h"
#include "query/search/plan.h"

namespace sheaf {

struct Candidates {
  std::vector<EntryId> ids;
  std::size_t unread = 0;
};

// All that match, if they are no more than `most`; else the likely ones, and of the rest the first.
// Throws Xapian::Error if the index is damaged.
Candidates candidates_for(const Plan& plan, Index& index, std::size_t most);

// Of what matches, those that have most of its terms.
std::vector<EntryId> having_most(const Xapian::Query& query, const Xapian::Database& database,
                                 std::size_t most);

}  // namespace sheaf
