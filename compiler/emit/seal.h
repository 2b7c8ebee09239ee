// SPDX-License-Identifier: GPL-2.0-or-later
// What makes one library of its parts, and puts it in its place.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>

#include "query/library/file_descriptor.h"
#include "query/library/hash.h"
#include "query/library/trailer.h"
#include "query/quantity/result.h"

namespace sheafc {

// The file holds the rows alone: marks it as one that no SQLite writes to. `identity` is made from the
// content, for the index's own identity.
struct RowsSealed {
  std::uint64_t rows_bytes = 0;
  std::string identity;           // 16 bytes
  std::uint64_t hash = 0;         // HashOfPieces of the rows
  std::uint64_t hash_before = 0;  // of those they were copied from
  sheaf::DigestOfBytes digest;    // of the rows, for that of the whole
};
sheaf::Result<RowsSealed> seal_rows(const std::string& file);

// Copies the index behind the rows, with its identity, adds the checks of its blocks, and ends the file with
// the trailer.
sheaf::Result<sheaf::Trailer> seal_library(const std::string& file, const sheaf::FileDescriptor& index,
                                           RowsSealed rows);

// The rows of a library into a file of their own, with some pages replaced: sealed as they were.
sheaf::Result<RowsSealed> copy_rows(const std::string& library,
                                    const std::map<std::uint32_t, std::string>& pages,
                                    const std::string& file);

// The rows of a library, in a file of their own that can be written to again, as they were before they were
// copied in order. A Failure also if their hash is not that one.
std::optional<sheaf::Failure> unseal_rows(const std::string& library, std::uint64_t hash,
                                          const std::string& file);

// Synced to the disk, then under its name, then the name synced too.
std::optional<sheaf::Failure> put_in_place(const std::string& file, const std::string& target);

}  // namespace sheafc
