// SPDX-License-Identifier: GPL-2.0-or-later
// What is to be reckoned, from the fields of a topic or from the words of `sheaf reckon` in q.
#pragma once

#include <string>
#include <vector>

#include "query/answer/reckon.h"
#include "query/web/asked.h"

namespace sheaf {

// The topic first. Of fields, each name and what it was filled with: topic=torque&thread=M8 is "torque thread
// M8".
std::vector<std::string> reckoning_asked(const HttpRequest& request);

Result<Reckoning> find_reckoning(const Asking& asking);

}  // namespace sheaf
