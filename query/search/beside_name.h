// SPDX-License-Identifier: GPL-2.0-or-later
// What is said beside the name of a thing: where it is, what happened to it, what nobody recorded of it. Internal
// to search.
#pragma once

#include "query/search/searcher.h"

namespace sheaf {

// Where nothing holds all that was said, but what was named first is called just so, takes that for the answers and
// says what was left aside.
bool answer_beside_name(Findings& findings, Searcher& searcher);

}  // namespace sheaf
