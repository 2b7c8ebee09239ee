// SPDX-License-Identifier: GPL-2.0-or-later
// Finding the sheets below a folder.
#pragma once

#include <string>
#include <vector>

#include "query/quantity/result.h"

namespace sheafc {

// Every *.yaml below `root`, sorted by the bytes of its path, or `root` itself if it is a file. What
// starts with a dot is skipped. A Failure, naming the path, for what would otherwise be left out in
// silence: a folder that cannot be read, a *.yaml that is no regular file, a *.yml, a symbolic link that
// leads nowhere or to a folder that was already read.
sheaf::Result<std::vector<std::string>> list_sheets(const std::string& root);

}  // namespace sheafc
