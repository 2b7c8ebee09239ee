// SPDX-License-Identifier: GPL-2.0-or-later
// Terms as queries of an index: what it does not have matches nothing, and falls out of what is asked. Two
// demands that differ in nothing else are then one query. Internal to search.
#pragma once

#include <string>
#include <string_view>
#include <unordered_map>

#include "query/library/index.h"
#include "query/library/index_terms.h"

namespace sheaf {

class KnownTerms {
 public:
  explicit KnownTerms(const Xapian::Database& database) : database_(database) {}

  // Each throws Xapian::Error if the index is damaged.
  Xapian::Query has(Prefix prefix, std::string_view body) { return has(term(prefix, body)); }
  Xapian::Query has(const std::string& term);

 private:
  Xapian::Database database_;
  std::unordered_map<std::string, bool> is_known_;
};

}  // namespace sheaf
