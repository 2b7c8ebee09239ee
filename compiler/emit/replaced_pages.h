// SPDX-License-Identifier: GPL-2.0-or-later
// Which pages of a library's rows are others once some sheets take the place of those of their names.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "query/library/library.h"
#include "query/library/record.h"
#include "query/library/row_body.h"

namespace sheafc {

struct ReplacedSheet {
  sheaf::SheetRecord before, now;
  sheaf::SheetBodies bodies;  // of what it says now
};

// Pages by their numbers, from 1, as a library written from the beginning would have them. Brings the date of
// `facts` up to date. None where other pages may change too (see row_pages.h): then all rows must be copied
// in order. `scratch` is a file that is made, for the time of the call.
std::optional<std::map<std::uint32_t, std::string>> replaced_pages(const std::string& library,
                                                                   const std::vector<ReplacedSheet>& sheets,
                                                                   const std::string& scratch,
                                                                   sheaf::LibraryFacts& facts);

}  // namespace sheafc
