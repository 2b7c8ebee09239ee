// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/of_kind.h"

#include "query/library/fold.h"
#include "query/library/index.h"
#include "query/library/index_terms.h"

namespace sheaf {
namespace {

Result<std::vector<EntryId>> ids_with(Library& library, const std::string& text, std::size_t limit) try {
  const auto& database = index_of(library).database();
  std::vector<EntryId> ids;
  for (auto hit = database.postlist_begin(text); hit != database.postlist_end(text); ++hit) {
    if (ids.size() == limit) break;
    ids.push_back(*hit);
  }
  return ids;
} catch (const Xapian::Error& error) {
  return Failure{library.facts().path + ": the index is damaged (" + error.get_msg() +
                 "); sheaf about --verify says more"};
}

Result<std::vector<EntryRecord>> entries_with(Library& library, const std::string& text, std::size_t limit) {
  const auto ids = ids_with(library, text, limit);
  if (!ids) return ids.failure();
  std::vector<EntryRecord> entries;
  for (const EntryId id : *ids) {
    auto entry = library.entry_by_id(id);
    if (!entry) return entry.failure();
    entries.push_back(*entry->entry);
  }
  return entries;
}

}  // namespace

Result<std::vector<EntryRecord>> entries_of_kind(Library& library, std::string_view kind, std::size_t limit) {
  return entries_with(library, term(Prefix::kind, kind), limit);
}

Result<std::vector<EntryRecord>> entries_numbered(Library& library, std::string_view number,
                                                  std::size_t limit) {
  return entries_with(library, term(Prefix::part_number, squeeze(number)), limit);
}

}  // namespace sheaf
