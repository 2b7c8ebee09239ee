// SPDX-License-Identifier: GPL-2.0-or-later
// The bodies of the rows of sheets and entries: what each says, as JSON that FORMAT.md describes. What
// entries of a sheet share stands once, in the body of the sheet, and they refer to it by its place there: so
// an entry is its row and that of its sheet, and no row depends on another sheet's.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/library/record.h"

namespace sheaf {

// The first of each is the sheet's own.
struct SharedLists {
  std::vector<std::string> files;
  std::vector<std::vector<FitRecord>> fits;
  std::vector<std::vector<CautionRecord>> cautions;
  std::vector<SourceRecord> sources;
  std::vector<CheckRecord> readings;
};

// Addresses and names stand beside the bodies, where they can be looked up.
struct SheetBodies {
  std::string sheet;
  std::vector<std::string> entries;
};
SheetBodies bodies_of(const SheetRecord& sheet);
// Of all that they say of it.
std::uint64_t hash_of(const SheetRecord& sheet, const SheetBodies& bodies);

// None if the text is no such body.
struct SheetFromBody {
  SheetRecord sheet;  // without entries
  SharedLists shared;
};
std::optional<SheetFromBody> sheet_from_body(std::string_view name, std::string_view body);
std::optional<EntryRecord> entry_from_body(std::string_view address, std::string_view body,
                                           const SharedLists& shared);

}  // namespace sheaf
