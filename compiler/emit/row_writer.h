// SPDX-License-Identifier: GPL-2.0-or-later
// The SQLite part of a library: sheets and words as rows, in the order in which they come. They are gathered in a
// file of their own and copied from there in order, so that rows which were replaced leave no trace.
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
#include "query/library/sql.h"

namespace sheafc {

class RowWriter {
 public:
  static sheaf::Result<RowWriter> create(const std::string& path);
  // The rows of an earlier library, in which sheets are to be replaced.
  static sheaf::Result<RowWriter> reopen(const std::string& path);

  std::optional<sheaf::Failure> add(const sheaf::SheetRecord& sheet);
  // In place of the sheet of that name, which must be alike in its RowShape.
  std::optional<sheaf::Failure> replace(const sheaf::SheetRecord& sheet);
  // Fills in the counts and the newest date of what the library says of itself, and copies it all into that file.
  std::optional<sheaf::Failure> finish(const std::vector<sheaf::WordRecord>& words, sheaf::LibraryFacts& facts,
                                       const std::string& file);

 private:
  enum class Into {
    file,
    source,
    reading,
    fit,
    caution,
    sheet,
    sheet_field,
    entry,
    field,
    former_address,
    word,
    word_stems,
    machine,
    machine_word,
    library,
    count,
  };
  // The numbers given to the sources, readings, fits and cautions of one sheet, which its entries share.
  template <typename Record>
  struct Numbered {
    std::vector<std::pair<Record, std::int64_t>> of_this_sheet;
    std::int64_t last = 0;
  };

  // The number of a row elsewhere, if there is one.
  using Reference = std::optional<std::int64_t>;
  struct Shared {
    Reference fits, cautions, source, reading;
    std::int64_t file = 0;
  };

  explicit RowWriter(sheaf::SqlDatabase database) : database_(std::move(database)) {}
  std::optional<sheaf::Failure> begin(const std::string& sql);
  sheaf::SqlQuery query(const std::string& sql) { return {database_.handle(), sql}; }
  struct Range {
    std::int64_t first = 0, last = -1;
  };
  // The rows of other tables that this sheet and its entries refer to in that column.
  sheaf::Result<Range> numbers_in(std::string_view column, std::int64_t sheet, const Range& entries);
  std::optional<sheaf::Failure> count_what_is_there();
  template <typename... Value>
  void insert(Into table, const Value&... values);
  // Calls `insert_rows` with a new number for what this sheet has not had yet. None for what says nothing.
  template <typename Record, typename InsertRows>
  Reference number_of(const Record& record, Numbered<Record>& known, InsertRows insert_rows);

  template <typename Record>
  Shared shared_by(const Record& record);
  Reference fit_set_number(const std::vector<sheaf::FitRecord>& fits);
  Reference caution_set_number(const std::vector<sheaf::CautionRecord>& cautions);
  Reference source_number(const sheaf::SourceRecord& source);
  Reference reading_number(const sheaf::CheckRecord& reading);
  std::int64_t file_number(const std::string& path);

  void add_entry(const sheaf::EntryRecord& entry);
  void add_field(const sheaf::EntryRecord& entry, const sheaf::FieldRecord& field, std::int64_t position);
  void note_machine(const sheaf::FitRecord& fit);
  void add_words(const std::vector<sheaf::WordRecord>& words);
  void add_machines();

  sheaf::SqlDatabase database_;
  std::array<std::unique_ptr<sheaf::SqlQuery>, static_cast<std::size_t>(Into::count)> queries_;
  std::optional<sheaf::Failure> fault_;  // the first

  std::map<std::string, std::int64_t> files_;
  std::pair<std::string, std::int64_t> last_file_;
  Numbered<sheaf::SourceRecord> sources_;
  Numbered<sheaf::CheckRecord> readings_;
  Numbered<std::vector<sheaf::FitRecord>> fit_sets_;
  Numbered<std::vector<sheaf::CautionRecord>> caution_sets_;
  std::map<std::pair<std::string, std::string>, sheaf::Machine> machines_;
  std::int64_t sheets_ = 0;
  sheaf::EntryId entries_ = 0;
  std::string newest_date_;
  bool reopened_ = false;
};

}  // namespace sheafc
