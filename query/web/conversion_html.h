// SPDX-License-Identifier: GPL-2.0-or-later
// A conversion as a page shows it: what follows, large and marked; below it what was typed.
#pragma once

#include <string>

#include "query/answer/conversion.h"

namespace sheaf {

std::string conversion_html(const Conversion& conversion);

}  // namespace sheaf
