// SPDX-License-Identifier: GPL-2.0-or-later
// Sheets that any other may need, named or not: tables, words, the crib.
#pragma once

#include <string_view>

#include "compiler/sheet/sheet.h"

namespace sheafc {

bool is_common(const Sheet& sheet);

// The same from the first keys of its text. A sheet that cannot be told apart may be one; a sheet that is
// said not to be one and is has errors.
bool may_be_common(std::string_view bytes);

}  // namespace sheafc
