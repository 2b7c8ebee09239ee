// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/row_reader.h"

#include <algorithm>

#include "query/library/fold.h"
#include "query/library/row_checksum.h"
#include "query/library/schema.h"

namespace sheaf {
namespace {

constexpr std::size_t most_remembered = 2000;  // stems

// In the order of RowReader::Ask.
constexpr std::string_view questions[] = {
    "SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY rowid",
    "SELECT name, data_date, sheets, entries, words, sqlite_version, xapian_version, checksum FROM library",
    "SELECT sheet, address, body, checksum FROM entry WHERE id = ?1",
    "SELECT id FROM entry WHERE address = ?1 UNION SELECT entry FROM former_address WHERE address = ?1 ORDER "
    "BY 1",
    "SELECT name, first_entry, entries, body, checksum FROM sheet WHERE id = ?1",
    "SELECT id FROM sheet WHERE name = ?1",
    "SELECT id FROM sheet ORDER BY id",
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

bool begins_with(std::string_view word, std::string_view asked) { return word.starts_with(asked); }

Failure damaged(const std::string& what) { return Failure{what + " does not match its checksum"}; }

}  // namespace

SqlQuery& RowReader::query(Ask ask) {
  auto& slot = queries_[static_cast<std::size_t>(ask)];
  if (!slot) slot = std::make_unique<SqlQuery>(database_.handle(), questions[static_cast<std::size_t>(ask)]);
  return slot->begin();
}

std::optional<Failure> RowReader::fault_of(Ask asked, const std::string& what) {
  const auto fault = queries_[static_cast<std::size_t>(asked)]->fault();
  if (fault) return Failure{what + " cannot be read: " + fault->message};
  return std::nullopt;
}

std::optional<Failure> RowReader::check_schema() {
  SqlQuery& rows = query(Ask::schema);
  for (const auto items : {schema_tables(), schema_indexes(), schema_views()}) {
    for (const SchemaItem& item : items) {
      if (!rows.next() || rows.text(0) != item.name || rows.text(1) != item.sql) {
        if (const auto fault = fault_of(Ask::schema, "its list of tables")) return fault;
        return Failure{"its table " + std::string(item.name) + " is not as its format has it"};
      }
    }
  }
  if (rows.next()) return Failure{"it has more tables than its format"};
  return fault_of(Ask::schema, "its list of tables");
}

Result<LibraryFacts> RowReader::facts() {
  SqlQuery& row = query(Ask::facts);
  if (!row.next()) {
    return fault_of(Ask::facts, "its description").value_or(Failure{"it has no description"});
  }
  LibraryFacts facts;
  facts.name = row.text(0);
  facts.data_date = row.text(1);
  facts.sheets = row.integer(2);
  facts.entries = row.integer(3);
  facts.words = row.integer(4);
  facts.sqlite_version = row.text(5);
  facts.xapian_version = row.text(6);
  const auto checksum =
      row_checksum({facts.sheets, facts.entries, facts.words},
                   {facts.name, facts.data_date, facts.sqlite_version, facts.xapian_version});
  if (row.integer(7) != checksum) return damaged("its description");
  return facts;
}

void RowReader::set_label(const std::string& label) {
  label_ = label;
  heads_ = {};
  recent_ = {};
}

Result<std::pair<EntryRecord, SheetHeadPtr>> RowReader::entry_and_head(EntryId id) {
  const auto what = [&] { return "entry " + std::to_string(id); };
  SqlQuery& row = query(Ask::entry).bind(1, std::int64_t{id});
  if (!row.next()) return fault_of(Ask::entry, what()).value_or(Failure{"there is no " + what()});
  const std::int64_t sheet = row.integer(0);
  const std::string_view address = row.view(1), body = row.view(2);
  if (row.integer(3) != row_checksum({id, sheet}, {address, body})) return damaged(what());
  const auto its_sheet = head(sheet);
  if (!its_sheet) return its_sheet.failure();
  auto entry = entry_from_body(address, body, (*its_sheet)->shared);
  if (!entry) return Failure{what() + " is not as its format has it"};
  entry->library = label_;
  return std::pair(std::move(*entry), *its_sheet);
}

Result<EntryRecord> RowReader::entry(EntryId id) {
  auto read = entry_and_head(id);
  if (!read) return read.failure();
  return std::move(read->first);
}

Result<EntryOnSheet> RowReader::entry_on_sheet(EntryId id) {
  auto& [kept_id, kept] = recent_[id % recent_.size()];
  if (kept.entry && kept_id == id) return kept;
  auto read = entry_and_head(id);
  if (!read) return read.failure();
  auto& [entry, head] = *read;
  kept_id = id;
  kept = {std::make_shared<const EntryRecord>(std::move(entry)), SheetPtr(head, &head->sheet)};
  return kept;
}

Result<std::vector<EntryId>> RowReader::entries_at(std::string_view address) {
  std::vector<EntryId> ids;
  SqlQuery& row = query(Ask::entries_at).bind(1, address);
  while (row.next()) ids.push_back(static_cast<EntryId>(row.integer(0)));
  if (auto fault = fault_of(Ask::entries_at, "the list of addresses")) return *fault;
  return ids;
}

Result<SheetHeadPtr> RowReader::head(std::int64_t sheet) {
  SheetHeadPtr& kept = heads_[static_cast<std::uint64_t>(sheet) % heads_.size()];
  if (kept && kept->id == sheet) return kept;
  const std::string what = "sheet " + std::to_string(sheet);
  SqlQuery& row = query(Ask::sheet).bind(1, sheet);
  if (!row.next()) return fault_of(Ask::sheet, what).value_or(Failure{"there is no " + what});
  const std::string_view name = row.view(0), body = row.view(3);
  const std::int64_t first_entry = row.integer(1), entries = row.integer(2);
  if (row.integer(4) != row_checksum({sheet, first_entry, entries}, {name, body})) return damaged(what);
  auto read = sheet_from_body(name, body);
  if (!read) return Failure{what + " is not as its format has it"};
  read->sheet.library = label_;
  kept = std::make_shared<SheetHead>(SheetHead{sheet, std::move(read->sheet), std::move(read->shared),
                                               static_cast<EntryId>(first_entry), entries});
  return kept;
}

Result<std::vector<SheetHeadPtr>> RowReader::sheet_named(std::string_view name) {
  std::vector<SheetHeadPtr> found;
  const auto is_it = [&](const SheetHeadPtr& kept) { return kept && kept->sheet.name == name; };
  if (const auto kept = std::ranges::find_if(heads_, is_it); kept != heads_.end()) return std::vector{*kept};
  SqlQuery& row = query(Ask::sheet_named).bind(1, name);
  if (row.next()) {
    const auto its_head = head(row.integer(0));
    if (!its_head) return its_head.failure();
    if ((*its_head)->sheet.name != name) return Failure{"the list of sheets leads to another sheet"};
    found.push_back(*its_head);
  }
  if (auto fault = fault_of(Ask::sheet_named, "the list of sheets")) return *fault;
  return found;
}

std::optional<Failure> RowReader::for_each_sheet(const std::function<bool(const SheetHead&)>& visit) {
  SqlQuery& row = query(Ask::all_sheets);
  while (row.next()) {
    const auto its_head = head(row.integer(0));
    if (!its_head) return its_head.failure();
    if (!visit(**its_head)) return std::nullopt;
  }
  return fault_of(Ask::all_sheets, "the list of sheets");
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

// Only those that have such a word: a damaged list of words must not bring another machine.
Result<std::vector<Machine>> RowReader::machines_from(SqlQuery& row, std::string_view asked, HasWord* has) {
  std::vector<Machine> machines;
  while (row.next()) {
    Machine machine{row.text(1), row.text(2), static_cast<int>(row.integer(3)),
                    static_cast<int>(row.integer(4))};
    const auto checksum =
        row_checksum({row.integer(0), machine.year_from, machine.year_to}, {machine.make, machine.model});
    if (row.integer(5) != checksum) {
      return damaged("machine " + std::to_string(row.integer(0)));
    }
    const auto is_so = [&](const std::string& word) { return has(word, asked); };
    if (std::ranges::any_of(words_of(fold(machine.make + ' ' + machine.model)), is_so)) {
      machines.push_back(std::move(machine));
    }
  }
  return machines;
}

Result<std::vector<Machine>> RowReader::machines() {
  auto machines = machines_from(query(Ask::machines), "", begins_with);
  if (auto fault = fault_of(Ask::machines, "the list of machines")) return *fault;
  return machines;
}

Result<std::vector<Machine>> RowReader::machines_between(std::string_view from, const std::string& past,
                                                         HasWord* has) {
  auto machines = machines_from(query(Ask::machines_with_word).bind(1, from).bind(2, past), from, has);
  if (auto fault = fault_of(Ask::machines_with_word, "the list of machines")) return *fault;
  return machines;
}

Result<std::vector<Machine>> RowReader::machines_with_word(std::string_view word) {
  const auto is_it = [](std::string_view each, std::string_view asked) { return each == asked; };
  return machines_between(word, std::string(word) + '\x01', is_it);
}

Result<std::vector<Machine>> RowReader::machines_beginning(std::string_view word) {
  return machines_between(word, std::string(word) + "\U0010FFFF", begins_with);
}

Result<std::vector<WordRecord>> RowReader::words_from(SqlQuery& row) {
  std::vector<WordRecord> words;
  while (row.next()) {
    WordRecord word{row.text(1), row.text(2), row.text(3), row.integer(4) != 0, row.integer(5) != 0};
    const auto checksum =
        row_checksum({row.integer(0), word.main, word.never}, {word.group, word.word, word.language});
    if (row.integer(6) != checksum) {
      return damaged("word " + std::to_string(row.integer(0)));
    }
    words.push_back(std::move(word));
  }
  return words;
}

Result<std::vector<WordRecord>> RowReader::words() {
  auto words = words_from(query(Ask::words));
  if (auto fault = fault_of(Ask::words, "the list of words")) return *fault;
  return words;
}

Result<std::vector<WordRecord>> RowReader::words_of_group(std::string_view group) {
  auto words = words_from(query(Ask::words_of_group).bind(1, group));
  if (auto fault = fault_of(Ask::words_of_group, "the list of words")) return *fault;
  return words;
}

Result<WordsBeginningPtr> RowReader::group_words(std::string_view first_stem) {
  const auto known = group_words_.find(first_stem);
  if (known != group_words_.end()) return known->second;
  auto words = words_from(query(Ask::group_words).bind(1, first_stem));
  if (!words) return words.failure();
  if (auto fault = fault_of(Ask::group_words, "the list of words")) return *fault;
  const auto beginning_so =
      std::make_shared<const WordsBeginning>(std::string(first_stem), std::move(words).value());
  if (group_words_.size() == most_remembered) group_words_.clear();
  group_words_.emplace(first_stem, beginning_so);
  return WordsBeginningPtr(beginning_so);
}

std::vector<std::string> RowReader::examine() {
  std::vector<std::string> faults;
  SqlQuery& row = query(Ask::examine);
  while (row.next()) {
    if (row.text(0) != "ok") faults.push_back("SQLite finds in its rows: " + row.text(0));
  }
  if (const auto fault = fault_of(Ask::examine, "its tables")) faults.push_back(fault->message);
  return faults;
}

}  // namespace sheaf
