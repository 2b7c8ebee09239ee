// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/known_terms.h"

namespace sheaf {

Xapian::Query KnownTerms::has(const std::string& term) {
  auto known = is_known_.find(term);
  if (known == is_known_.end()) known = is_known_.emplace(term, database_.term_exists(term)).first;
  return known->second ? Xapian::Query(term) : Xapian::Query::MatchNothing;
}

}  // namespace sheaf
