// SPDX-License-Identifier: GPL-2.0-or-later
// The wrenches of the one who asks, as an address names them: they take the place of the shop's.
//
//   range=10..60 N·m&step=0.5&accuracy=3&length=300 mm&wrench=three-eighths        and again for each further wrench
#pragma once

#include <optional>

#include "query/answer/crib.h"
#include "query/web/request.h"

namespace sheaf {

// Nothing if none is named. A range needs a step, in its unit; the accuracy is ± 4 per cent (ISO 6789-1) and the
// name "wrench in hand" where nothing else is said; the length, from hand to square, is needed with an adapter only.
// The adapters, the units and the tolerance stay those of the shop, if it has a crib.
Result<std::optional<Crib>> own_crib(const HttpRequest& request, const Crib* shop);

// A length above 0, such as 300 mm.
Result<Quantity> length_from(std::string_view typed, std::string_view what);

}  // namespace sheaf
