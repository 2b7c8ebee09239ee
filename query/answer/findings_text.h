// SPDX-License-Identifier: GPL-2.0-or-later
// What was found, as text: the answer first, then how the question was read, then what came close.
#pragma once

#include "query/answer/findings.h"
#include "query/answer/page.h"

namespace sheaf {

void write_text(Page& page, const FoundAnswers& found);

}  // namespace sheaf
