// SPDX-License-Identifier: GPL-2.0-or-later
// A folder as a revision of git has it, without touching the work tree.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "compiler/sheet/workspace.h"
#include "query/quantity/result.h"

namespace sheafc {

// The *.yaml files below the folder, by their paths under it. Runs `git archive`.
sheaf::Result<std::vector<SheetText>> sheets_in_revision(const std::string& revision,
                                                         const std::string& folder);

// The *.yaml files of a tar archive (ustar, with the long names of pax), by their paths below `folder`.
sheaf::Result<std::vector<SheetText>> sheets_in_tar(std::string_view archive, std::string_view folder);

}  // namespace sheafc
