// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/of_kind.h"

#include "query/library/index.h"
#include "query/library/index_terms.h"

namespace sheaf {
namespace {

Result<std::vector<EntryId>> ids_of_kind(Library& library, std::string_view kind, std::size_t limit) try {
  const auto& database = index_of(library).database();
  const std::string of_kind = term(Prefix::kind, kind);
  std::vector<EntryId> ids;
  for (auto hit = database.postlist_begin(of_kind); hit != database.postlist_end(of_kind); ++hit) {
    if (ids.size() == limit) break;
    ids.push_back(*hit);
  }
  return ids;
} catch (const Xapian::Error& error) {
  return Failure{library.facts().path + ": the index is damaged (" + error.get_msg() +
                 "); sheaf about --verify says more"};
}

}  // namespace

Result<std::vector<EntryRecord>> entries_of_kind(Library& library, std::string_view kind, std::size_t limit) {
  const auto ids = ids_of_kind(library, kind, limit);
  if (!ids) return ids.failure();
  std::vector<EntryRecord> entries;
  for (const EntryId id : *ids) {
    auto entry = library.entry_by_id(id);
    if (!entry) return entry.failure();
    entries.push_back(std::move(entry).value());
  }
  return entries;
}

}  // namespace sheaf
