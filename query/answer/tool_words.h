// SPDX-License-Identifier: GPL-2.0-or-later
// What a hand reaches for: the tool that fits a drive, and the stuff that a state of the thread needs.
#pragma once

#include <string>
#include <string_view>

#include "query/trade/drive.h"

namespace sheaf {

std::string tool_for(
    const Drive& drive);  // "27 mm socket", "6 mm hex key", "T30 bit", "hook spanner, 4 slots"

// "dry" -> "", "greased" -> "grease", "anti-seize" -> "anti-seize paste".
std::string_view stuff_for(std::string_view state);

}  // namespace sheaf
