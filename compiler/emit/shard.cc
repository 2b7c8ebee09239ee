// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/emit/shard.h"

#include <fcntl.h>
#include <sys/mman.h>
#include <unistd.h>
#include <xapian.h>

#include <filesystem>
#include <system_error>

#include "query/library/index_terms.h"

namespace sheafc {
namespace {

using namespace sheaf;

constexpr std::uintmax_t most_in_memory = 64 << 20;  // bytes
constexpr std::size_t piece = 1 << 20;

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

void add_to(Xapian::Document& document, const IndexedEntry& indexed) {
  for (const Term& term : indexed.terms) document.add_term(term.text, term.weight);
  for (const SlotValue& value : indexed.values) {
    document.add_value(value.slot, Xapian::sortable_serialise(value.number));
  }
}

void add_spelling(Xapian::WritableDatabase& database, const IndexedEntry& indexed) {
  for (const std::string& word : indexed.spelling) database.add_spelling(word);
}

void index_sheets(Xapian::WritableDatabase& database, const std::vector<SheetRecord>& sheets,
                  const WordGroups& groups) {
  for (const SheetRecord& sheet : sheets) {
    const EntryIndexer indexer(sheet, groups);
    for (const EntryRecord& entry : sheet.entries) {
      const bool shares = indexer.shares(entry);
      const IndexedEntry own = shares ? indexer.index_own(entry) : indexer.index(entry);
      Xapian::Document document;
      if (shares) add_to(document, indexer.shared());
      add_to(document, own);
      database.add_document(document);
      if (shares) add_spelling(database, indexer.shared());
      add_spelling(database, own);
    }
  }
}

// Xapian syncs every table that it writes, which nobody needs before the library is whole: in memory that is
// nothing.
FileDescriptor file_in_memory() { return FileDescriptor(::memfd_create("index", MFD_CLOEXEC)); }

std::optional<Failure> compact_into(const Xapian::Database& database, const FileDescriptor& file) {
  const int descriptor = ::fcntl(file.number(), F_DUPFD_CLOEXEC, 0);
  if (descriptor < 0) return system_failure();
  Xapian::Database(database).compact(descriptor);  // which closes it, whatever happens
  return std::nullopt;
}

std::optional<Failure> merge_into(const std::vector<std::string>& shards, const FileDescriptor& file) {
  return guarded([&]() -> std::optional<Failure> {
    Xapian::Database all;
    for (const std::string& shard : shards) all.add_database(Xapian::Database(shard));
    return compact_into(all, file);
  });
}

std::optional<Failure> save(const FileDescriptor& made, const std::string& path) {
  const FileDescriptor file(::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666));
  const off_t bytes = ::lseek(made.number(), 0, SEEK_END);
  if (file.number() < 0 || bytes < 0) return system_failure();
  std::uint64_t at = 0;
  std::optional<Failure> unwritten;
  const auto fault =
      read_range(made.number(), 0, static_cast<std::uint64_t>(bytes), piece, [&](std::string_view read) {
        if (!unwritten) unwritten = write_at(file.number(), at, read);
        at += read.size();
      });
  return fault ? fault : unwritten;
}

std::uintmax_t bytes_of(const std::vector<std::string>& files) {
  std::uintmax_t sum = 0;
  std::error_code ignored;
  for (const std::string& file : files) sum += std::filesystem::file_size(file, ignored);
  return sum;
}

}  // namespace

std::optional<Failure> write_shard(const std::string& file, const std::vector<SheetRecord>& sheets,
                                   const WordGroups& groups, const std::vector<std::string>& spelling) {
  const std::string folder = file + ".d";
  const FileDescriptor made = file_in_memory();
  auto fault = guarded([&]() -> std::optional<Failure> {
    // Nobody else sees it before it is merged, and nobody asks it for a document's terms.
    constexpr int flags =
        Xapian::DB_CREATE | Xapian::DB_BACKEND_GLASS | Xapian::DB_NO_SYNC | Xapian::DB_NO_TERMLIST;
    Xapian::WritableDatabase database(folder, flags);
    for (const std::string& word : spelling) database.add_spelling(word);
    index_sheets(database, sheets, groups);
    database.commit();
    return compact_into(database, made);
  });
  std::error_code ignored;
  std::filesystem::remove_all(folder, ignored);
  return fault ? fault : save(made, file);
}

std::optional<Failure> merge_shards(const std::vector<std::string>& shards, const std::string& file) {
  const FileDescriptor made = file_in_memory();
  auto fault = merge_into(shards, made);
  return fault ? fault : save(made, file);
}

Result<FileDescriptor> merge_shards_in(const std::string& folder, const std::vector<std::string>& shards) {
  FileDescriptor made;
  if (bytes_of(shards) <= most_in_memory) {
    made = file_in_memory();
  } else {
    const std::string path = folder + "/index";
    made = FileDescriptor(::open(path.c_str(), O_RDWR | O_CREAT | O_TRUNC | O_CLOEXEC, 0666));
    ::unlink(path.c_str());
  }
  if (auto fault = merge_into(shards, made)) return *fault;
  return made;
}

std::string xapian_version() { return Xapian::version_string(); }

}  // namespace sheafc
