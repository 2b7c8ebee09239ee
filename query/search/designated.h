// SPDX-License-Identifier: GPL-2.0-or-later
// A designation or a part's number says all there is to say, whatever words stand around it: "HX359-WH what
// is it off", "6205 bore", "class 8.8 tensile strength". Internal to search.
#pragma once

#include "query/search/searcher.h"

namespace sheaf {

// For a question that found nothing: fills Findings::answers with what has the number; or, where no machine
// is named, with the rows of tables that have the designation.
bool answer_by_designation(Findings& findings, Searcher& searcher);

}  // namespace sheaf
