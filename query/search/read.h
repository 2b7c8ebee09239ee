// SPDX-License-Identifier: GPL-2.0-or-later
// From what was typed to how it is understood.
#pragma once

#include <string_view>

#include "query/search/lexicon.h"
#include "query/search/reading.h"

namespace sheaf {

// Never fails: what cannot be read is in QuestionReading::unread.
QuestionReading read_question(std::string_view text, Lexicon& lexicon);

}  // namespace sheaf
