// SPDX-License-Identifier: GPL-2.0-or-later
// What an open Library holds. Internal to query/library.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "query/library/index.h"
#include "query/library/library.h"
#include "query/library/library_file.h"
#include "query/library/row_reader.h"

namespace sheaf {

struct Library::State {
  LibraryFile file;
  RowReader rows;
  Index index;
  LibraryFacts facts;
  std::string label = {};

  static Result<Index> open_index(const LibraryFile& file, FileDescriptor at_index);
  std::optional<Failure> read_facts();

  // The same, as the caller of a Library is told it: the file, and what to do.
  Failure damage(const Failure& how) const;
  template <typename T>
  Result<T> naming_the_file(Result<T> result) const {
    if (!result) return damage(result.failure());
    return result;
  }

  std::optional<Failure> compare_digest() const;
  std::vector<std::string> examine_records();
  std::vector<std::string> examine_index() const;
};

}  // namespace sheaf
