// SPDX-License-Identifier: GPL-2.0-or-later
// The question of a page, answered as `sheaf find` answers it. For the pages and for /api/find.
#pragma once

#include "query/answer/findings.h"
#include "query/web/asked.h"

namespace sheaf {

// By q and the filters. With `typing`, a last word that is no whole one yet is completed.
Result<FoundAnswers> find_answers(const Asking& asking);

// Every variant of the entry at that address, from the first library that has it; none if none has.
Result<std::vector<Answer>> answers_at(const Asking& asking, const std::string& address);
Result<std::vector<SheetRecord>> sheets_named(const Asking& asking, const std::string& name);

}  // namespace sheaf
