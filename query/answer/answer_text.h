// SPDX-License-Identifier: GPL-2.0-or-later
// An answer as text for a person: the figure first, beside it what changes the act, then what
// identifies it, the cautions, the source and the address.
#pragma once

#include "query/answer/answer.h"
#include "query/answer/page.h"

namespace sheaf {

// `whole` says every machine, every detail and where it is written; otherwise the most a bench needs.
enum class Extent { bench, whole };
void write_text(Page& page, const Answer& answer, Extent extent);

// An answer among others: figure and name, below them the machine and the address.
void add_to_list(std::vector<std::vector<Line>>& rows, const Answer& answer);

}  // namespace sheaf
