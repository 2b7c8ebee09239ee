// SPDX-License-Identifier: GPL-2.0-or-later
// The wrenches of the one who asks, as an address names them: they take the place of the shop's.
//
//   range=10..60 N·m&step=0.5&accuracy=3&wrench=three-eighths        and again for each further wrench
#pragma once

#include <optional>

#include "query/answer/crib.h"
#include "query/web/request.h"

namespace sheaf {

// Nothing if none is named. A range needs a step, in its unit; the accuracy is ± 4 per cent (ISO 6789-1) and the
// name "wrench in hand" where nothing else is said.
Result<std::optional<Crib>> own_crib(const HttpRequest& request);

}  // namespace sheaf
