// SPDX-License-Identifier: GPL-2.0-or-later
// The answers of a search as comma-separated values, a row each, for a spreadsheet.
#pragma once

#include <string>

#include "query/answer/findings.h"

namespace sheaf {

// The names of the columns, and one row for each answer; or, where counts were asked for, value and entries.
std::string csv_of(const FoundAnswers& found);

}  // namespace sheaf
