// SPDX-License-Identifier: GPL-2.0-or-later
// What cannot be the answer, whatever speaks for it: what states nothing in the unit asked for, has another
// thread, is a seal where an oil was asked for. Internal to search.
#pragma once

#include <vector>

#include "query/search/weigh.h"

namespace sheaf {

// Takes Weighed::may_answer from those.
void rule_out(std::vector<Weighed>& entries, const QuestionReading& reading, Witness& witness,
              Lexicon& lexicon);

}  // namespace sheaf
