// SPDX-License-Identifier: GPL-2.0-or-later
// "Fifteen links", "twenty-six mil": numbers in words. Internal to search.
#pragma once

#include <string>
#include <string_view>

namespace sheaf {

// The text with its numbers from ten to ninety-nine, thousands of them, years and fractions in digits, and
// those below ten where a unit follows.
std::string with_digits(std::string_view text);

}  // namespace sheaf
