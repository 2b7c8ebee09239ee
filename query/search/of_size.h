// SPDX-License-Identifier: GPL-2.0-or-later
// Entries by what they measure or are marked with, by the index: quick in a large library.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "query/library/index_terms.h"
#include "query/library/library.h"

namespace sheaf {

struct LengthSpan {
  double least_mm = 0, most_mm = 0;
};

// Those with, for each span, some dimension of their size or some stated length within it: no more than a
// first sieve. The most that are read is `limit`; `more` says that there were more.
struct SizedEntries {
  std::vector<EntryRecord> entries;
  bool more = false;
};
Result<SizedEntries> entries_measuring(Library& library, std::string_view kind,
                                       std::span<const LengthSpan> spans, std::size_t limit);

// Those that the index has under all of the terms: of a kind, of a size, of a bearing's designation.
Result<SizedEntries> entries_with(Library& library, const std::vector<std::string>& terms, std::size_t limit);

// Every size that some entry has, once, as size_key spells it: few even where the entries are many.
Result<std::vector<std::string>> size_keys(Library& library);

}  // namespace sheaf
