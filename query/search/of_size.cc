// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/of_size.h"

#include "query/library/index.h"
#include "query/library/index_terms.h"

namespace sheaf {
namespace {

using Query = Xapian::Query;

constexpr unsigned dimensions = 3;
constexpr double metres_per_mm = 0.001;
constexpr double slack_mm = 1e-6;  // for the rounding of inches

Query in_span(const LengthSpan& span) {
  const double least = span.least_mm - slack_mm, most = span.most_mm + slack_mm;
  const auto bytes = [](double value) { return Xapian::sortable_serialise(value); };
  std::vector<Query> any;
  for (unsigned i = 0; i < dimensions; ++i)
    any.emplace_back(Query::OP_VALUE_RANGE, size_slot + i, bytes(least), bytes(most));
  any.emplace_back(Query::OP_AND,
                   Query(Query::OP_VALUE_LE, least_slot(Dimension::length), bytes(most * metres_per_mm)),
                   Query(Query::OP_VALUE_GE, most_slot(Dimension::length), bytes(least * metres_per_mm)));
  return Query(Query::OP_OR, any.begin(), any.end());
}

Failure damaged(const Library& library, const Xapian::Error& error) {
  return Failure{library.facts().path + ": the index is damaged (" + error.get_msg() +
                 "); sheaf about --verify says more"};
}

// In the order of the sheets.
Result<std::vector<EntryId>> ids_of(Library& library, const std::vector<Query>& all, std::size_t limit) try {
  Xapian::Enquire enquire(index_of(library).database());
  enquire.set_weighting_scheme(Xapian::BoolWeight());
  enquire.set_query(Query(Query::OP_AND, all.begin(), all.end()));
  const Xapian::MSet found = enquire.get_mset(0, static_cast<Xapian::doccount>(limit));
  std::vector<EntryId> ids;
  for (auto hit = found.begin(); hit != found.end(); ++hit) ids.push_back(*hit);
  return ids;
} catch (const Xapian::Error& error) {
  return damaged(library, error);
}

// Up to `limit` of those that match all.
Result<SizedEntries> entries_matching(Library& library, const std::vector<Query>& all, std::size_t limit) {
  const auto ids = ids_of(library, all, limit + 1);
  if (!ids) return ids.failure();
  SizedEntries found{{}, ids->size() > limit};
  for (const EntryId id : *ids) {
    if (found.entries.size() == limit) break;
    auto entry = library.entry_by_id(id);
    if (!entry) return entry.failure();
    found.entries.push_back(*entry->entry);
  }
  return found;
}

}  // namespace

Result<SizedEntries> entries_measuring(Library& library, std::string_view kind,
                                       std::span<const LengthSpan> spans, std::size_t limit) {
  std::vector<Query> all = {Query(term(Prefix::kind, kind))};
  for (const auto& span : spans) all.push_back(in_span(span));
  return entries_matching(library, all, limit);
}

Result<SizedEntries> entries_with(Library& library, const std::vector<std::string>& terms,
                                  std::size_t limit) {
  std::vector<Query> all;
  for (const auto& each : terms) all.emplace_back(each);
  return entries_matching(library, all, limit);
}

Result<std::vector<std::string>> size_keys(Library& library) try {
  const auto& database = index_of(library).database();
  const std::string letters(letters_of(Prefix::size));
  std::vector<std::string> keys;
  for (auto found = database.allterms_begin(letters); found != database.allterms_end(letters); ++found) {
    std::string key = (*found).substr(letters.size());
    const bool is_longer_prefix = key.empty() || (key.front() >= 'A' && key.front() <= 'Z');
    if (!is_longer_prefix) keys.push_back(std::move(key));
  }
  return keys;
} catch (const Xapian::Error& error) {
  return damaged(library, error);
}

}  // namespace sheaf
