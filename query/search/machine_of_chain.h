// SPDX-License-Identifier: GPL-2.0-or-later
// The machine that a question names by its chain: "525 chain over 15 links". Internal to search.
#pragma once

#include "query/search/searcher.h"

namespace sheaf {

// True where no machine was named and one machine alone has a chain of the size typed: it is then the machine
// of the reading, which says so, and the size no measure of what is sought, whether anything is found then or
// not.
bool take_machine_of_chain(QuestionReading& reading, Searcher& searcher);

}  // namespace sheaf
