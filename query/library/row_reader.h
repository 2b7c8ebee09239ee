// SPDX-License-Identifier: GPL-2.0-or-later
// Records from the rows of a library, each row tested against its checksum. Internal to query/library;
// Failures do not name the file.
#pragma once

#include <array>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/library/library.h"
#include "query/library/record.h"
#include "query/library/row_body.h"
#include "query/library/sql.h"

namespace sheaf {

// A sheet without entries, the numbers of those it has, and what they share.
struct SheetHead {
  std::int64_t id = 0;
  SheetRecord sheet;
  SharedLists shared;
  EntryId first_entry = 0;
  std::int64_t entries = 0;
};
using SheetHeadPtr = std::shared_ptr<const SheetHead>;

class RowReader {
 public:
  explicit RowReader(SqlDatabase database) : database_(std::move(database)) {}

  // Whether the tables and views are exactly those of our format, and what the library says of itself.
  std::optional<Failure> check_schema();
  Result<LibraryFacts> facts();

  // What every entry and sheet is said to come from; those kept so far are forgotten.
  void set_label(const std::string& label);

  Result<EntryRecord> entry(EntryId id);
  Result<EntryOnSheet> entry_on_sheet(EntryId id);
  Result<std::vector<EntryId>> entries_at(std::string_view address);

  Result<std::vector<SheetHeadPtr>> sheet_named(std::string_view name);  // one or none
  std::optional<Failure> for_each_sheet(const std::function<bool(const SheetHead&)>& visit);
  Result<std::vector<EntryRecord>> entries_of(const SheetHead& head);

  Result<std::vector<Machine>> machines();
  Result<std::vector<Machine>> machines_with_word(std::string_view word);
  Result<std::vector<Machine>> machines_beginning(std::string_view word);
  Result<std::vector<WordRecord>> words();
  Result<std::vector<WordRecord>> words_of_group(std::string_view group);
  Result<WordsBeginningPtr> group_words(std::string_view first_stem);

  // SQLite's own examination: one sentence for each fault.
  std::vector<std::string> examine();

 private:
  enum class Ask {
    schema,
    facts,
    entry,
    entries_at,
    sheet,
    sheet_named,
    all_sheets,
    machines,
    machines_with_word,
    words,
    words_of_group,
    group_words,
    examine,
    count,
  };
  SqlQuery& query(Ask ask);  // prepared when first asked, reset and ready to be bound
  std::optional<Failure> fault_of(Ask asked, const std::string& what);
  Result<SheetHeadPtr> head(std::int64_t sheet);
  Result<std::pair<EntryRecord, SheetHeadPtr>> entry_and_head(EntryId id);
  using HasWord = bool(std::string_view word, std::string_view asked);
  Result<std::vector<Machine>> machines_from(SqlQuery& rows, std::string_view asked, HasWord* has);
  Result<std::vector<Machine>> machines_between(std::string_view from, const std::string& past, HasWord* has);
  Result<std::vector<WordRecord>> words_from(SqlQuery& rows);

  SqlDatabase database_;
  std::string label_;
  std::array<std::unique_ptr<SqlQuery>, static_cast<std::size_t>(Ask::count)> queries_;
  // The sheets read last, each in the place that its number leads to: hits are mostly of few sheets, and each
  // entry asks for its own.
  std::array<SheetHeadPtr, 128> heads_;
  // Entries read last, the same.
  std::array<std::pair<EntryId, EntryOnSheet>, 512> recent_;
  // What was looked up of the glossary, by first stem: names and questions are made of few words.
  std::map<std::string, WordsBeginningPtr, std::less<>> group_words_;
};

}  // namespace sheaf
