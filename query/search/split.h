// SPDX-License-Identifier: GPL-2.0-or-later
// Which of the hits are the answers, and which are only worth a look beside them. Internal to search.
#pragma once

#include <cstddef>
#include <vector>

#include "query/search/find.h"

namespace sheaf {

// The best, and what is as good, are the answers; if nothing is called what was asked, all that comes close
// to the best. Where no machine was named, one machine's part that is called just so must not hide that of
// another, called almost so. The hits come best first.
void split(Findings& findings, std::vector<Hit> hits, std::size_t most_answers);

// A tyre's size says it all, and is no name.
bool is_tyre_alone(const QuestionReading& reading);

}  // namespace sheaf
