// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/emit/shard.h"

#include <fcntl.h>
#include <unistd.h>
#include <xapian.h>

#include <cerrno>
#include <filesystem>
#include <system_error>

#include "query/library/index_terms.h"

namespace sheafc {
namespace {

using namespace sheaf;

// How many databases are open at once when they are merged: well below the usual limit of files.
constexpr std::size_t most_merged_at_once = 512;

// Runs `work`, which uses Xapian; what it throws becomes a Failure.
template <typename Work>
std::optional<Failure> guarded(Work work) {
  try {
    return work();
  } catch (const Xapian::Error& error) {
    const char* system = error.get_error_string();
    return Failure{error.get_msg() + (system ? std::string(" (") + system + ')' : std::string())};
  } catch (const std::exception& error) {
    return Failure{error.what()};
  }
}

Xapian::Document document_of(const IndexedEntry& indexed) {
  Xapian::Document document;
  for (const Term& term : indexed.terms) document.add_term(term.text, term.weight);
  for (const SlotValue& value : indexed.values) {
    document.add_value(value.slot, Xapian::sortable_serialise(value.number));
  }
  return document;
}

void index_sheets(Xapian::WritableDatabase& database, const std::vector<SheetRecord>& sheets,
                  const WordGroups& groups) {
  for (const SheetRecord& sheet : sheets) {
    const EntryIndexer indexer(sheet, groups);
    for (const EntryRecord& entry : sheet.entries) {
      const IndexedEntry indexed = indexer.index(entry);
      database.add_document(document_of(indexed));
      for (const std::string& word : indexed.spelling) database.add_spelling(word);
    }
  }
}

std::optional<Failure> compact_into(const Xapian::Database& database, const std::string& file) {
  const int descriptor = ::open(file.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
  if (descriptor < 0) return Failure{std::generic_category().message(errno)};
  Xapian::Database(database).compact(descriptor);  // which closes it, whatever happens
  return std::nullopt;
}

std::optional<Failure> merge(const std::vector<std::string>& shards, const std::string& file) {
  return guarded([&]() -> std::optional<Failure> {
    Xapian::Database all;
    for (const std::string& shard : shards) all.add_database(Xapian::Database(shard));
    return compact_into(all, file);
  });
}

}  // namespace

std::optional<Failure> write_shard(const std::string& file, const std::vector<SheetRecord>& sheets,
                                   const WordGroups& groups, const std::vector<std::string>& spelling) {
  const std::string folder = file + ".d";
  auto fault = guarded([&]() -> std::optional<Failure> {
    // Nobody else sees it before it is merged, and nobody asks it for a document's terms.
    constexpr int flags =
        Xapian::DB_CREATE | Xapian::DB_BACKEND_GLASS | Xapian::DB_NO_SYNC | Xapian::DB_NO_TERMLIST;
    Xapian::WritableDatabase database(folder, flags);
    for (const std::string& word : spelling) database.add_spelling(word);
    index_sheets(database, sheets, groups);
    database.commit();
    return compact_into(database, file);
  });
  std::error_code ignored;
  std::filesystem::remove_all(folder, ignored);
  return fault;
}

std::optional<Failure> merge_shards(std::vector<std::string> shards, const std::string& file) {
  std::vector<std::string> between;
  while (shards.size() > most_merged_at_once) {
    std::vector<std::string> merged;
    for (std::size_t at = 0; at < shards.size(); at += most_merged_at_once) {
      const std::size_t end = std::min(at + most_merged_at_once, shards.size());
      const std::vector<std::string> some(shards.begin() + static_cast<std::ptrdiff_t>(at),
                                          shards.begin() + static_cast<std::ptrdiff_t>(end));
      merged.push_back(file + ".merged-" + std::to_string(between.size()));
      between.push_back(merged.back());
      if (auto fault = merge(some, merged.back())) return fault;
    }
    shards = std::move(merged);
  }
  auto fault = merge(shards, file);
  for (const std::string& piece : between) ::unlink(piece.c_str());
  return fault;
}

std::string xapian_version() { return Xapian::version_string(); }

}  // namespace sheafc
