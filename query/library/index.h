// SPDX-License-Identifier: GPL-2.0-or-later
// The Xapian index inside a library. For query/search alone: nothing else sees Xapian's types.
#pragma once

#include <xapian.h>

#include <array>
#include <memory>
#include <string>
#include <vector>

#include "query/library/library.h"

namespace sheaf {

class IndexGuard;

// The first entries that match, and between how many and how many do in all.
struct Matches {
  std::vector<EntryId> ids;
  std::size_t least = 0, most = 0;
};

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

  // The first `count` by id, of a query that is made of terms and values alone. Kept for a while: from letter
  // to letter of a question most of what is asked stays the same. Stays valid until the next call.
  const Matches& first_matches(const Xapian::Query& query, std::size_t count);

 private:
  struct Asked {
    std::string query;
    std::size_t count = 0;
    Matches matches;
  };

  Xapian::Database database_;
  std::array<Asked, 64> recent_;       // each query has one place, which is that of others too
  std::unique_ptr<IndexGuard> guard_;  // goes first, while the descriptor is still its own
};

// The same, of any query, and not kept.
Matches first_of(const Xapian::Query& query, const Xapian::Database& database, std::size_t count);

Index& index_of(Library& library);

}  // namespace sheaf
