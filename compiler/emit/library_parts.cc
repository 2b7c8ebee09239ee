// SPDX-License-Identifier: GPL-2.0-or-later
// The index is merged while the rows are copied in order; then it goes behind them, and the trailer behind
// it.
#include "compiler/emit/library_parts.h"

#include <algorithm>
#include <future>
#include <thread>

#include "compiler/emit/shard.h"
#include "query/library/trailer.h"

namespace sheafc {

using namespace sheaf;

Failure LibraryParts::cannot_write(const Failure& why) const {
  return Failure{"cannot write " + path + ": " + why.message};
}

std::optional<Failure> LibraryParts::stopped() const {
  if (options.interrupted && *options.interrupted) return Failure{"stopped; " + path + " is as it was"};
  return std::nullopt;
}

Result<Receipt> LibraryParts::put_together() {
  return put_together([&](const std::string& file, LibraryFacts& facts) -> Result<RowsSealed> {
    if (auto fault = rows->finish(words, facts, file)) return *fault;
    return seal_rows(file);
  });
}

Result<Receipt> LibraryParts::put_together(const WriteRows& write_rows) {
  const std::string file = folder.file("library");
  auto merging = std::async(std::launch::async, [&] { return index.finish(); });
  LibraryFacts facts;
  facts.name = name;
  facts.sqlite_version = sqlite_version();
  facts.xapian_version = xapian_version();
  auto rows_sealed = write_rows(file, facts);
  if (!rows_sealed) return cannot_write(rows_sealed.failure());
  const std::uint64_t rows_hash = rows_sealed->hash;
  const auto merged = merging.get();
  if (!merged) return cannot_write(merged.failure());
  const auto trailer = seal_library(file, *merged, std::move(rows_sealed).value());
  if (!trailer) return cannot_write(trailer.failure());
  if (auto stop = stopped()) return *stop;
  Receipt receipt{path,
                  to_hexadecimal(trailer->digest),
                  static_cast<std::int64_t>(trailer->file_bytes),
                  facts.sheets,
                  facts.entries,
                  facts.words,
                  rows_hash,
                  index.hashes()};
  std::future<void> told;
  if (options.when_sealed) told = std::async(std::launch::async, options.when_sealed, std::cref(receipt));
  const auto fault = put_in_place(file, folder.target());
  if (told.valid()) told.get();
  if (fault) return cannot_write(*fault);
  return receipt;
}

IndexBuilder index_in(const BuildFolder& folder, const std::vector<WordRecord>& words,
                      const EmitOptions& options, IndexBuilder::Recall recall) {
  const unsigned threads =
      options.threads != 0 ? options.threads : std::max(1u, std::thread::hardware_concurrency());
  const std::string maker = options.program + ' ' + std::to_string(library_format) + ' ' + xapian_version();
  return IndexBuilder({folder.path(), threads, options.cache, maker, std::move(recall)}, words);
}

}  // namespace sheafc
