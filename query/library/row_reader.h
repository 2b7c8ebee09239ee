// SPDX-License-Identifier: GPL-2.0-or-later
// Records from the rows of a library, each put together from the tables it lies in and tested against
// its checksum. Internal to query/library; Failures do not name the file.
#pragma once

#include <array>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/library/library.h"
#include "query/library/record.h"
#include "query/library/sql.h"

namespace sheaf {

// A sheet without entries, and the numbers of those it has.
struct SheetHead {
  SheetRecord sheet;
  EntryId first_entry = 0;
  std::int64_t entries = 0;
};

class RowReader {
 public:
  explicit RowReader(SqlDatabase database) : database_(std::move(database)) {}

  // Whether the tables and views are exactly those of our format, and what the library says of itself.
  std::optional<Failure> check_schema();
  Result<LibraryFacts> facts();

  Result<EntryRecord> entry(EntryId id);
  Result<std::vector<EntryId>> entries_at(std::string_view address);

  Result<std::vector<SheetHead>> sheet_named(std::string_view name);  // one or none
  std::optional<Failure> for_each_sheet(const std::function<bool(SheetHead)>& visit);
  Result<std::vector<EntryRecord>> entries_of(const SheetHead& head);

  Result<std::vector<Machine>> machines();
  Result<std::vector<Machine>> machines_with_word(std::string_view beginning);
  Result<std::vector<WordRecord>> words();
  Result<std::vector<WordRecord>> words_of_group(std::string_view group);
  Result<std::vector<GroupWord>> group_words(std::string_view first_stem);

  // SQLite's own examination: one sentence for each fault.
  std::vector<std::string> examine();

 private:
  enum class Ask {
    schema,
    facts,
    entry,
    fields,
    fits,
    cautions,
    former,
    entries_at,
    sheet_named,
    all_sheets,
    sheet_fields,
    machines,
    machines_with_word,
    words,
    words_of_group,
    group_words,
    examine,
    count,
  };
  SqlQuery& query(Ask ask);  // prepared when first asked, reset and ready to be bound
  std::optional<Failure> read_lists(EntryId id, std::int64_t fit_set, std::int64_t caution_set,
                                    EntryRecord& entry);
  std::vector<FieldRecord> fields_from(Ask ask, std::int64_t owner);
  const std::vector<FitRecord>& fits_of(std::int64_t fit_set);
  const std::vector<CautionRecord>& cautions_of(std::int64_t caution_set);
  std::optional<Failure> fault_of(std::initializer_list<Ask> asked, const std::string& what);
  Result<SheetHead> sheet_from(const SqlQuery& row);
  Result<std::vector<Machine>> machines_from(SqlQuery& rows, std::string_view beginning);
  Result<std::vector<WordRecord>> words_from(SqlQuery& rows);

  // Of the set that was read last: a sheet and its entries mostly share one.
  template <typename Record>
  struct LastSet {
    std::int64_t number = -1;
    std::vector<Record> records;
  };

  SqlDatabase database_;
  LastSet<FitRecord> fits_;
  LastSet<CautionRecord> cautions_;
  std::array<std::unique_ptr<SqlQuery>, static_cast<std::size_t>(Ask::count)> queries_;
};

}  // namespace sheaf
