// SPDX-License-Identifier: GPL-2.0-or-later
// Rows of comma-separated values as RFC 4180 has them, each ended by a newline.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sheaf {

// Cells with a comma, a quote or a line break are quoted; control characters are left out.
std::string csv_row(const std::vector<std::string>& cells, char separator = ',');

}  // namespace sheaf
