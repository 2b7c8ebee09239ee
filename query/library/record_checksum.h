// SPDX-License-Identifier: GPL-2.0-or-later
// The checksum that each record of a library carries: over its number and every value in it, those that
// lie in other tables too, so that a row that was changed, lost or taken for another shows.
#pragma once

#include <cstdint>

#include "query/library/library.h"
#include "query/library/record.h"

namespace sheaf {

// As SQLite keeps integers: signed.
std::int64_t checksum_of(EntryId id, const EntryRecord& entry);
// Without its entries, but with their number and where they begin.
std::int64_t checksum_of(EntryId first_entry, std::int64_t entries, const SheetRecord& sheet);
std::int64_t checksum_of(std::int64_t id, const WordRecord& word);
std::int64_t checksum_of(std::int64_t id, const Machine& machine);
std::int64_t checksum_of(const LibraryFacts& facts);  // what the rows say; not path, digest, bytes, format

}  // namespace sheaf
