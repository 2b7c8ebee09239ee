// SPDX-License-Identifier: GPL-2.0-or-later
// The entries of one kind, or with one part number, by the index alone: quick in a large library that has
// few of them.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

#include "query/library/library.h"

namespace sheaf {

// In the order of the sheets; the most that are read is `limit`.
Result<std::vector<EntryRecord>> entries_of_kind(Library& library, std::string_view kind, std::size_t limit);
// Those whose own part number is this one, however it is typed.
Result<std::vector<EntryRecord>> entries_numbered(Library& library, std::string_view number,
                                                  std::size_t limit);

}  // namespace sheaf
