// SPDX-License-Identifier: GPL-2.0-or-later
// What makes one library of its parts, and puts it in its place.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "query/library/trailer.h"
#include "query/quantity/result.h"

namespace sheafc {

// The file holds the rows alone: marks it as one that no SQLite writes to, and says where the index goes.
// `identity` is made from the content, for the index's own identity.
struct RowsSealed {
  std::uint64_t rows_bytes = 0;
  std::uint64_t index_offset = 0;
  std::string identity;  // 16 bytes
};
sheaf::Result<RowsSealed> seal_rows(const std::string& file);

// The index stands at its offset: gives it its identity, adds the checks of its blocks, and ends the
// file with the trailer.
sheaf::Result<sheaf::Trailer> seal_library(const std::string& file, const RowsSealed& rows);

// Synced to the disk, then under its name, then the name synced too.
std::optional<sheaf::Failure> put_in_place(const std::string& file, const std::string& target);

}  // namespace sheafc
