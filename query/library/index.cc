// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/index.h"

#include <functional>
#include <utility>

#include "query/library/index_guard.h"

namespace sheaf {

Index::Index(Xapian::Database database, std::unique_ptr<IndexGuard> guard)
    : database_(std::move(database)), guard_(std::move(guard)) {}
Index::Index(Index&&) noexcept = default;
Index::~Index() = default;

Matches first_of(const Xapian::Query& query, const Xapian::Database& database, std::size_t count) {
  Xapian::Enquire enquire(database);
  enquire.set_weighting_scheme(Xapian::BoolWeight());
  enquire.set_query(query);
  const auto wanted = static_cast<Xapian::doccount>(count);
  const Xapian::MSet found = enquire.get_mset(0, wanted, wanted);
  Matches matches{{}, found.get_matches_lower_bound(), found.get_matches_upper_bound()};
  matches.ids.reserve(found.size());
  for (auto hit = found.begin(); hit != found.end(); ++hit) matches.ids.push_back(*hit);
  return matches;
}

const Matches& Index::first_matches(const Xapian::Query& query, std::size_t count) {
  std::string bytes = query.serialise();
  Asked& asked = recent_[std::hash<std::string>()(bytes) % recent_.size()];
  if (asked.count != count || asked.query != bytes)
    asked = {std::move(bytes), count, first_of(query, database_, count)};
  return asked.matches;
}

}  // namespace sheaf
