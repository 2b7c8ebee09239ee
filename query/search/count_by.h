// SPDX-License-Identifier: GPL-2.0-or-later
// How many of the entries found are of each machine, kind, thread and so on.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "query/search/find.h"

namespace sheaf {

// "machine", "kind", "assembly", "sheet", "thread", "drive", "size"
std::span<const std::string_view> all_facets();

// The most first, equal ones by name. An entry that fits several machines counts for each; one without
// such a thing is not counted.
std::vector<FacetCount> count_by(std::string_view facet, const std::vector<Hit>& hits);

}  // namespace sheaf
