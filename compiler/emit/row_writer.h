// SPDX-License-Identifier: GPL-2.0-or-later
// The SQLite part of a library: sheets and words as rows, in the order in which they come. They are gathered
// in a file of their own and copied from there in order, so that rows which were replaced leave no trace.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "query/library/library.h"
#include "query/library/record.h"
#include "query/library/row_body.h"
#include "query/library/sql.h"

namespace sheafc {

class RowWriter {
 public:
  static sheaf::Result<RowWriter> create(const std::string& path);
  // The rows of an earlier library, in which sheets are to be replaced.
  static sheaf::Result<RowWriter> reopen(const std::string& path);

  std::optional<sheaf::Failure> add(const sheaf::SheetRecord& sheet, const sheaf::SheetBodies& bodies);
  // By that number, its entries from that one on.
  std::optional<sheaf::Failure> add_at(std::int64_t number, sheaf::EntryId first_entry,
                                       const sheaf::SheetRecord& sheet, const sheaf::SheetBodies& bodies);
  // In place of the sheet of that name, which must have as many entries, for the same machines.
  std::optional<sheaf::Failure> replace(const sheaf::SheetRecord& sheet, const sheaf::SheetBodies& bodies);
  // Fills in the counts and the newest date of what the library says of itself, and copies it all into that
  // file.
  std::optional<sheaf::Failure> finish(const std::vector<sheaf::WordRecord>& words,
                                       sheaf::LibraryFacts& facts, const std::string& file);

  // Leaves what was added as it lies, with these facts.
  std::optional<sheaf::Failure> save(const sheaf::LibraryFacts& facts);

 private:
  enum class Into { library, sheet, entry, former_address, word, word_stems, machine, machine_word, count };

  explicit RowWriter(sheaf::SqlDatabase database) : database_(std::move(database)) {}
  std::optional<sheaf::Failure> begin(const std::string& sql);
  std::optional<sheaf::Failure> count_what_is_there(sheaf::LibraryFacts& facts);
  sheaf::SqlQuery query(const std::string& sql) { return {database_.handle(), sql}; }
  template <typename... Value>
  void insert(Into table, const Value&... values);
  void add_entry(const sheaf::EntryRecord& entry, const std::string& body);
  void add_words(const std::vector<sheaf::WordRecord>& words);
  void add_machines();
  void describe(const sheaf::LibraryFacts& facts);

  sheaf::SqlDatabase database_;
  std::array<std::unique_ptr<sheaf::SqlQuery>, static_cast<std::size_t>(Into::count)> queries_;
  std::optional<sheaf::Failure> fault_;  // the first

  std::map<std::pair<std::string, std::string>, sheaf::Machine> machines_;
  std::int64_t sheets_ = 0;
  sheaf::EntryId entries_ = 0;
  bool reopened_ = false;
};

}  // namespace sheafc
