// SPDX-License-Identifier: GPL-2.0-or-later
// The Xapian index inside a library. For query/search alone: nothing else sees Xapian's types.
#pragma once

#include <xapian.h>

#include "query/library/library.h"

namespace sheaf {

// Lives as long as the Library. Every call into it may throw Xapian::Error on a damaged file; whoever
// calls catches it in the same function.
class Index {
 public:
  explicit Index(Xapian::Database database) : database_(std::move(database)) {}
  const Xapian::Database& database() const { return database_; }
  std::int64_t entry_count() const { return database_.get_doccount(); }

 private:
  Xapian::Database database_;
};

Index& index_of(Library& library);

}  // namespace sheaf
