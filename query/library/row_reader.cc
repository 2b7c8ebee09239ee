// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/row_reader.h"

#include <algorithm>

#include "query/library/fold.h"
#include "query/library/record_checksum.h"
#include "query/library/schema.h"

namespace sheaf {
namespace {

// In the order of RowReader::Ask. Source and reading, file and line stand where *_from() expect them.
constexpr std::string_view questions[] = {
    "SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY rowid",
    "SELECT name, data_date, sheets, entries, words, sqlite_version, xapian_version, checksum FROM library",
    "SELECT e.address, e.variant, e.kind, e.name, e.fit_set, e.caution_set, o.title, o.publisher, o.edition, "
    "o.year, "
    "o.page, o.note, r.\"on\", r.\"by\", r.against, r.second, p.path, e.line, e.status, e.withdrawn_on, "
    "e.withdrawn_reason, e.withdrawn_instead, e.critical, e.checksum FROM entry e LEFT JOIN file p ON p.id = "
    "e.file "
    "LEFT JOIN source o ON o.id = e.source LEFT JOIN reading r ON r.id = e.reading WHERE e.id = ?1",
    "SELECT d.\"key\", d.text, p.path, d.line FROM field d LEFT JOIN file p ON p.id = d.file WHERE d.entry = "
    "?1 "
    "ORDER BY d.position",
    "SELECT make, model, year_from, year_to, market, frame_from, frame_to, note FROM fit WHERE fit_set = ?1 "
    "ORDER BY position",
    "SELECT name, text FROM caution WHERE caution_set = ?1 ORDER BY position",
    "SELECT address FROM former_address WHERE entry = ?1 ORDER BY position",
    "SELECT id FROM entry WHERE address = ?1 UNION SELECT entry FROM former_address WHERE address = ?1 ORDER "
    "BY 1",
    "SELECT s.name, s.form, s.title, s.assembly, s.maker, s.row_kind, o.title, o.publisher, o.edition, "
    "o.year, o.page, "
    "o.note, r.\"on\", r.\"by\", r.against, r.second, p.path, s.line, s.fit_set, s.caution_set, s.invented, "
    "s.first_entry, s.entries, s.checksum, s.id FROM sheet s LEFT JOIN file p ON p.id = s.file "
    "LEFT JOIN source o ON o.id = s.source LEFT JOIN reading r ON r.id = s.reading WHERE s.name = ?1",
    "SELECT s.name, s.form, s.title, s.assembly, s.maker, s.row_kind, o.title, o.publisher, o.edition, "
    "o.year, o.page, "
    "o.note, r.\"on\", r.\"by\", r.against, r.second, p.path, s.line, s.fit_set, s.caution_set, s.invented, "
    "s.first_entry, s.entries, s.checksum, s.id FROM sheet s LEFT JOIN file p ON p.id = s.file "
    "LEFT JOIN source o ON o.id = s.source LEFT JOIN reading r ON r.id = s.reading ORDER BY s.id",
    "SELECT d.\"key\", d.text, p.path, d.line FROM sheet_field d LEFT JOIN file p ON p.id = d.file WHERE "
    "d.sheet = ?1 "
    "ORDER BY d.position",
    "SELECT id, make, model, year_from, year_to, checksum FROM machine ORDER BY id",
    "SELECT id, make, model, year_from, year_to, checksum FROM machine WHERE id IN (SELECT machine FROM "
    "machine_word "
    "WHERE word >= ?1 AND word < ?2) ORDER BY id",
    "SELECT id, word_group, word, language, main, never, checksum FROM word ORDER BY id",
    "SELECT id, word_group, word, language, main, never, checksum FROM word WHERE word_group = ?1 ORDER BY "
    "id",
    "SELECT id, word_group, word, language, main, never, checksum FROM word WHERE id IN (SELECT word FROM "
    "word_stems "
    "WHERE first_stem = ?1) ORDER BY id",
    "PRAGMA quick_check(20)",
};

SourceRecord source_from(const SqlQuery& row) {
  return {row.text(6),  row.text(7),  row.text(8),
          row.text(10), row.text(11), static_cast<int>(row.integer(9))};
}

CheckRecord checked_from(const SqlQuery& row) {
  return {row.text(12), row.text(13), row.text(14), row.text(15)};
}

Place place_from(const SqlQuery& row, int column) {
  return {row.text(column), static_cast<int>(row.integer(column + 1))};
}

EntryRecord entry_from(const SqlQuery& row) {
  EntryRecord entry;
  entry.address = row.text(0);
  entry.variant = row.text(1);
  entry.kind = row.text(2);
  entry.name = row.text(3);
  entry.source = source_from(row);
  entry.checked = checked_from(row);
  entry.place = place_from(row, 16);
  entry.status = row.text(18);
  if (!row.is_null(19)) entry.withdrawn.push_back({row.text(19), row.text(20), row.text(21)});
  entry.critical = row.integer(22) != 0;
  return entry;
}

Failure damaged(const std::string& what) { return Failure{what + " does not match its checksum"}; }

}  // namespace

SqlQuery& RowReader::query(Ask ask) {
  auto& slot = queries_[static_cast<std::size_t>(ask)];
  if (!slot) slot = std::make_unique<SqlQuery>(database_.handle(), questions[static_cast<std::size_t>(ask)]);
  return slot->begin();
}

std::optional<Failure> RowReader::fault_of(std::initializer_list<Ask> asked, const std::string& what) {
  for (const Ask ask : asked) {
    const auto& done = queries_[static_cast<std::size_t>(ask)];
    if (!done) continue;
    if (const auto fault = done->fault()) return Failure{what + " cannot be read: " + fault->message};
  }
  return std::nullopt;
}

std::optional<Failure> RowReader::check_schema() {
  SqlQuery& rows = query(Ask::schema);
  for (const auto items : {schema_tables(), schema_indexes(), schema_views()}) {
    for (const SchemaItem& item : items) {
      if (!rows.next() || rows.text(0) != item.name || rows.text(1) != item.sql) {
        if (const auto fault = fault_of({Ask::schema}, "its list of tables")) return fault;
        return Failure{"its table " + std::string(item.name) + " is not as its format has it"};
      }
    }
  }
  if (rows.next()) return Failure{"it has more tables than its format"};
  return fault_of({Ask::schema}, "its list of tables");
}

Result<LibraryFacts> RowReader::facts() {
  SqlQuery& row = query(Ask::facts);
  if (!row.next()) {
    return fault_of({Ask::facts}, "its description").value_or(Failure{"it has no description"});
  }
  LibraryFacts facts;
  facts.name = row.text(0);
  facts.data_date = row.text(1);
  facts.sheets = row.integer(2);
  facts.entries = row.integer(3);
  facts.words = row.integer(4);
  facts.sqlite_version = row.text(5);
  facts.xapian_version = row.text(6);
  if (row.integer(7) != checksum_of(facts)) return damaged("its description");
  return facts;
}

Result<EntryRecord> RowReader::entry(EntryId id) {
  const std::string what = "entry " + std::to_string(id);
  SqlQuery& row = query(Ask::entry).bind(1, std::int64_t{id});
  if (!row.next()) return fault_of({Ask::entry}, what).value_or(Failure{"there is no " + what});
  EntryRecord entry = entry_from(row);
  entry.fits = fits_of(row.integer(4));
  entry.cautions = cautions_of(row.integer(5));
  entry.fields = fields_from(Ask::fields, id);
  SqlQuery& former = query(Ask::former).bind(1, std::int64_t{id});
  while (former.next()) entry.formerly.push_back(former.text(0));
  if (auto fault = fault_of({Ask::fits, Ask::cautions, Ask::fields, Ask::former}, what)) return *fault;
  if (row.integer(23) != checksum_of(id, entry)) return damaged(what);
  return entry;
}

std::vector<FieldRecord> RowReader::fields_from(Ask ask, std::int64_t owner) {
  std::vector<FieldRecord> fields;
  SqlQuery& row = query(ask).bind(1, owner);
  while (row.next()) fields.push_back({row.text(0), row.text(1), place_from(row, 2)});
  return fields;
}

const std::vector<FitRecord>& RowReader::fits_of(std::int64_t fit_set) {
  if (fits_.number == fit_set) return fits_.records;
  fits_ = {-1, {}};
  SqlQuery& row = query(Ask::fits).bind(1, fit_set);
  while (row.next()) {
    fits_.records.push_back({row.text(0), row.text(1), static_cast<int>(row.integer(2)),
                             static_cast<int>(row.integer(3)), row.text(4), row.text(5), row.text(6),
                             row.text(7)});
  }
  if (!row.fault()) fits_.number = fit_set;
  return fits_.records;
}

const std::vector<CautionRecord>& RowReader::cautions_of(std::int64_t caution_set) {
  if (cautions_.number == caution_set) return cautions_.records;
  cautions_ = {-1, {}};
  SqlQuery& row = query(Ask::cautions).bind(1, caution_set);
  while (row.next()) cautions_.records.push_back({row.text(0), row.text(1)});
  if (!row.fault()) cautions_.number = caution_set;
  return cautions_.records;
}

Result<std::vector<EntryId>> RowReader::entries_at(std::string_view address) {
  std::vector<EntryId> ids;
  SqlQuery& row = query(Ask::entries_at).bind(1, address);
  while (row.next()) ids.push_back(static_cast<EntryId>(row.integer(0)));
  if (auto fault = fault_of({Ask::entries_at}, "the list of addresses")) return *fault;
  return ids;
}

Result<SheetHead> RowReader::sheet_from(const SqlQuery& row) {
  SheetHead head;
  SheetRecord& sheet = head.sheet;
  sheet.name = row.text(0);
  sheet.form = row.text(1);
  sheet.title = row.text(2);
  sheet.assembly = row.text(3);
  sheet.maker = row.text(4);
  sheet.row_kind = row.text(5);
  sheet.source = source_from(row);
  sheet.checked = checked_from(row);
  sheet.place = place_from(row, 16);
  sheet.fits = fits_of(row.integer(18));
  sheet.cautions = cautions_of(row.integer(19));
  sheet.invented = row.integer(20) != 0;
  sheet.fields = fields_from(Ask::sheet_fields, row.integer(24));
  head.first_entry = static_cast<EntryId>(row.integer(21));
  head.entries = row.integer(22);
  const std::string what = "sheet " + std::to_string(row.integer(24));
  if (auto fault = fault_of({Ask::fits, Ask::cautions, Ask::sheet_fields}, what)) return *fault;
  if (row.integer(23) != checksum_of(head.first_entry, head.entries, sheet)) return damaged(what);
  return head;
}

Result<std::vector<SheetHead>> RowReader::sheet_named(std::string_view name) {
  std::vector<SheetHead> found;
  SqlQuery& row = query(Ask::sheet_named).bind(1, name);
  if (row.next()) {
    auto head = sheet_from(row);
    if (!head) return head.failure();
    if (head->sheet.name != name) return Failure{"the list of sheets leads to another sheet"};
    found.push_back(std::move(head).value());
  }
  if (auto fault = fault_of({Ask::sheet_named}, "the list of sheets")) return *fault;
  return found;
}

std::optional<Failure> RowReader::for_each_sheet(const std::function<bool(SheetHead)>& visit) {
  SqlQuery& row = query(Ask::all_sheets);
  while (row.next()) {
    auto head = sheet_from(row);
    if (!head) return head.failure();
    if (!visit(std::move(head).value())) return std::nullopt;
  }
  return fault_of({Ask::all_sheets}, "the list of sheets");
}

Result<std::vector<EntryRecord>> RowReader::entries_of(const SheetHead& head) {
  std::vector<EntryRecord> entries;
  for (std::int64_t i = 0; i < head.entries; ++i) {
    auto read = entry(head.first_entry + static_cast<EntryId>(i));
    if (!read) return read.failure();
    entries.push_back(std::move(read).value());
  }
  return entries;
}

// Only those of which a word begins so: a damaged list of words must not bring another machine.
Result<std::vector<Machine>> RowReader::machines_from(SqlQuery& row, std::string_view beginning) {
  std::vector<Machine> machines;
  while (row.next()) {
    Machine machine{row.text(1), row.text(2), static_cast<int>(row.integer(3)),
                    static_cast<int>(row.integer(4))};
    if (row.integer(5) != checksum_of(row.integer(0), machine)) {
      return damaged("machine " + std::to_string(row.integer(0)));
    }
    const auto begins_so = [&](const std::string& word) { return word.starts_with(beginning); };
    if (std::ranges::any_of(words_of(fold(machine.make + ' ' + machine.model)), begins_so)) {
      machines.push_back(std::move(machine));
    }
  }
  return machines;
}

Result<std::vector<Machine>> RowReader::machines() {
  auto machines = machines_from(query(Ask::machines), "");
  if (auto fault = fault_of({Ask::machines}, "the list of machines")) return *fault;
  return machines;
}

Result<std::vector<Machine>> RowReader::machines_with_word(std::string_view beginning) {
  const std::string past_all = std::string(beginning) + "\U0010FFFF";
  auto machines =
      machines_from(query(Ask::machines_with_word).bind(1, beginning).bind(2, past_all), beginning);
  if (auto fault = fault_of({Ask::machines_with_word}, "the list of machines")) return *fault;
  return machines;
}

Result<std::vector<WordRecord>> RowReader::words_from(SqlQuery& row) {
  std::vector<WordRecord> words;
  while (row.next()) {
    WordRecord word{row.text(1), row.text(2), row.text(3), row.integer(4) != 0, row.integer(5) != 0};
    if (row.integer(6) != checksum_of(row.integer(0), word)) {
      return damaged("word " + std::to_string(row.integer(0)));
    }
    words.push_back(std::move(word));
  }
  return words;
}

Result<std::vector<WordRecord>> RowReader::words() {
  auto words = words_from(query(Ask::words));
  if (auto fault = fault_of({Ask::words}, "the list of words")) return *fault;
  return words;
}

Result<std::vector<WordRecord>> RowReader::words_of_group(std::string_view group) {
  auto words = words_from(query(Ask::words_of_group).bind(1, group));
  if (auto fault = fault_of({Ask::words_of_group}, "the list of words")) return *fault;
  return words;
}

Result<std::vector<GroupWord>> RowReader::group_words(std::string_view first_stem) {
  const auto words = words_from(query(Ask::group_words).bind(1, first_stem));
  if (!words) return words.failure();
  if (auto fault = fault_of({Ask::group_words}, "the list of words")) return *fault;
  std::vector<GroupWord> beginning_so;
  for (const WordRecord& word : *words) {
    for (GroupWord& spelling : group_words_of(word)) {
      if (spelling.stems.front() == first_stem) beginning_so.push_back(std::move(spelling));
    }
  }
  return beginning_so;
}

std::vector<std::string> RowReader::examine() {
  std::vector<std::string> faults;
  SqlQuery& row = query(Ask::examine);
  while (row.next()) {
    if (row.text(0) != "ok") faults.push_back("SQLite finds in its rows: " + row.text(0));
  }
  if (const auto fault = fault_of({Ask::examine}, "its tables")) faults.push_back(fault->message);
  return faults;
}

}  // namespace sheaf
