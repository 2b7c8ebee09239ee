// SPDX-License-Identifier: GPL-2.0-or-later
// Beside every torque, what to set on which of the workshop's wrenches.
#pragma once

#include <vector>

#include "query/answer/answer.h"
#include "query/library/library.h"

namespace sheaf {

// Gives every answer with a torque its lines. A crib that cannot be read is said, and costs only these lines.
void say_what_to_set(std::vector<Answer>& answers, const std::vector<Library*>& libraries);

}  // namespace sheaf
