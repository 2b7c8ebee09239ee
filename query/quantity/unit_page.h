// SPDX-License-Identifier: GPL-2.0-or-later
// The unit table as a page for people: query/quantity/UNITS.md is this text, and a test keeps it so.
#pragma once

#include <string>

namespace sheaf {

// Markdown: one table a dimension, with each unit's symbol, name, size, spellings and source.
std::string units_as_markdown();

}  // namespace sheaf
