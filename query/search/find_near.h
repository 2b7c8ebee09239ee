// SPDX-License-Identifier: GPL-2.0-or-later
// What comes near where nothing answers: each further search gives up one demand, and says which.
// Internal to search.
#pragma once

#include "query/search/searcher.h"

namespace sheaf {

// Fills Findings::near, why_near and dropped.
void find_near(Findings& findings, Searcher& searcher);

// Beside answers that have the very size, what nearly has it, so that a worn part is not taken for another.
void add_near_sizes(Findings& findings, Searcher& searcher);

// A word that nobody knows may be a machine that is not in the library: what there is without it.
void find_without_unknown_words(Findings& findings, Searcher& searcher);

}  // namespace sheaf
