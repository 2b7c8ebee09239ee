// SPDX-License-Identifier: GPL-2.0-or-later
// The Xapian index inside a library. For query/search alone: nothing else sees Xapian's types.
#pragma once

#include <xapian.h>

#include <memory>

#include "query/library/library.h"

namespace sheaf {

class IndexGuard;

// Lives as long as the Library; so does every copy of its database. Every block that is read is tested
// first, so every call into it may throw Xapian::Error on a damaged file; whoever calls catches it in the
// same function.
class Index {
 public:
  Index(Xapian::Database database, std::unique_ptr<IndexGuard> guard);
  Index(Index&&) noexcept;
  ~Index();
  const Xapian::Database& database() const { return database_; }
  std::int64_t entry_count() const { return database_.get_doccount(); }

 private:
  Xapian::Database database_;
  std::unique_ptr<IndexGuard> guard_;  // goes first, while the descriptor is still its own
};

Index& index_of(Library& library);

}  // namespace sheaf
