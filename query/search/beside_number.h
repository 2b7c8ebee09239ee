// SPDX-License-Identifier: GPL-2.0-or-later
// A number in a question that is no figure of what is sought: the condition under which it is stated ("oil
// pressure at 5000"), the size by which a whole sheet is known ("48 fork snap ring"), or what the reader
// measured ("disc measured 2.6"). Internal to search.
#pragma once

#include "query/search/searcher.h"

namespace sheaf {

// For a question that found nothing: fills Findings::answers with what is called just so without its numbers,
// if one of these readings makes it one place of one machine, or one entry; says which reading that was.
bool answer_beside_number(Findings& findings, Searcher& searcher);

}  // namespace sheaf
