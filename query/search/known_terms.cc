// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/known_terms.h"

namespace sheaf {

Xapian::Query KnownTerms::has(const std::string& term) {
  const auto [known, is_new] = is_known_.try_emplace(term);
  if (is_new) known->second = database_.term_exists(term);
  return known->second ? Xapian::Query(term) : Xapian::Query::MatchNothing;
}

}  // namespace sheaf
