// SPDX-License-Identifier: GPL-2.0-or-later
// The sheets as they stand somewhere: in a library, in a folder, or in a revision of git.
#pragma once

#include <string>
#include <vector>

#include "compiler/cli/compilation.h"
#include "query/library/record.h"
#include "query/quantity/result.h"

namespace sheafc {

// A file that ends in .sheaf is a library; anything else is sheets, which must have no errors. `libraries`
// are those that the sheets build against.
sheaf::Result<std::vector<sheaf::SheetRecord>> snapshot_of(const std::string& place,
                                                           const std::vector<std::string>& libraries);

// The same of a folder as git has it in a revision.
sheaf::Result<std::vector<sheaf::SheetRecord>> snapshot_of_revision(
    const std::string& revision, const std::string& folder, const std::vector<std::string>& libraries);

}  // namespace sheafc
