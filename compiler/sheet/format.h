// SPDX-License-Identifier: GPL-2.0-or-later
// A sheet in its canonical form: keys in declared order, values in the canonical spelling of their type,
// two spaces a level. Every remark stays; what a sheet says never changes.
#pragma once

#include <memory>
#include <string>

#include "compiler/sheet/sheet.h"
#include "query/quantity/result.h"

namespace sheafc {

// The sheet must have been read without a fault. The result is read again and compared: a Failure if it
// would say anything else or lack a remark. format_sheet of the result is the result.
sheaf::Result<std::string> format_sheet(const Sheet& sheet);

// All that a sheet says, in one text: two sheets that say the same have the same.
std::string meaning_of(const Sheet& sheet);

}  // namespace sheafc
