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

// One row of a list: figure, name, machine, address.
std::vector<Line> list_row(const Answer& answer);

}  // namespace sheaf
