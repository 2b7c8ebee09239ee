// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/emit/row_writer.h"

#include <algorithm>
#include <set>

#include "query/library/fold.h"
#include "query/library/row_checksum.h"
#include "query/library/schema.h"
#include "query/library/trailer.h"
#include "query/library/word_groups.h"

namespace sheafc {
namespace {

using namespace sheaf;

// In the order of RowWriter::Into, with the number of values in a row.
constexpr std::pair<std::string_view, int> tables[] = {
    {"library", 8}, {"sheet", 6},      {"entry", 5},   {"former_address", 2},
    {"word", 7},    {"word_stems", 3}, {"machine", 6}, {"machine_word", 2}};

std::string insertion(std::string_view table, int values) {
  std::string sql = "INSERT INTO " + std::string(table) + " VALUES (?";
  for (int i = 1; i < values; ++i) sql += ", ?";
  return sql + ')';
}

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += text.empty() ? word : ' ' + word;
  return text;
}

// The span of years in which both lie; 0 is an open end.
void widen(Machine& machine, const FitRecord& fit) {
  const bool open_end = machine.year_to == 0 || fit.year_to == 0;
  machine.year_from = std::min(machine.year_from, fit.year_from);
  machine.year_to = open_end ? 0 : std::max(machine.year_to, fit.year_to);
}

}  // namespace

Result<RowWriter> RowWriter::create(const std::string& path) {
  auto database = SqlDatabase::create(path);
  if (!database) return database.failure();
  RowWriter writer(std::move(database).value());
  std::string sql = "BEGIN; PRAGMA application_id=" + std::to_string(application_id) +
                    "; PRAGMA user_version=" + std::to_string(library_format) + ';';
  for (const SchemaItem& table : schema_tables()) sql.append(table.sql) += ';';
  if (const auto fault = writer.begin(sql)) return *fault;
  return writer;
}

Result<RowWriter> RowWriter::reopen(const std::string& path) {
  auto database = SqlDatabase::create(path);
  if (!database) return database.failure();
  RowWriter writer(std::move(database).value());
  writer.reopened_ = true;
  if (const auto fault = writer.begin("BEGIN;")) return *fault;
  return writer;
}

std::optional<Failure> RowWriter::begin(const std::string& sql) {
  if (auto fault = database_.execute(sql)) return fault;
  std::ranges::transform(tables, queries_.begin(), [&](const auto& table) {
    return std::make_unique<SqlQuery>(database_.handle(), insertion(table.first, table.second));
  });
  return std::nullopt;
}

template <typename... Value>
void RowWriter::insert(Into table, const Value&... values) {
  SqlQuery& row = queries_[static_cast<std::size_t>(table)]->begin();
  int at = 0;
  (row.bind(++at, values), ...);
  auto fault = row.run();
  if (fault && !fault_) fault_ = std::move(fault);
}

std::optional<Failure> RowWriter::add(const SheetRecord& sheet, const SheetBodies& bodies) {
  const std::int64_t first_entry = entries_ + 1, count = static_cast<std::int64_t>(sheet.entries.size());
  ++sheets_;
  insert(Into::sheet, sheets_, sheet.name, first_entry, count, bodies.sheet,
         row_checksum({sheets_, first_entry, count}, {sheet.name, bodies.sheet}));
  for (std::size_t i = 0; i < sheet.entries.size(); ++i) add_entry(sheet.entries[i], bodies.entries[i]);
  return fault_;
}

std::optional<Failure> RowWriter::add_at(std::int64_t number, EntryId first_entry, const SheetRecord& sheet,
                                         const SheetBodies& bodies) {
  sheets_ = number - 1;
  entries_ = first_entry - 1;
  return add(sheet, bodies);
}

// Its rows go, and the counters back to where they stood before it.
std::optional<Failure> RowWriter::replace(const SheetRecord& sheet, const SheetBodies& bodies) {
  SqlQuery place = query("SELECT id, first_entry, entries FROM sheet WHERE name = ?");
  if (!place.bind(1, sheet.name).next())
    return place.fault().value_or(Failure{"there is no sheet " + sheet.name});
  const std::int64_t number = place.integer(0), first_entry = place.integer(1);
  for (const char* rows : {"entry WHERE id", "former_address WHERE entry"}) {
    SqlQuery remove = query(std::string("DELETE FROM ") + rows + " BETWEEN ? AND ?");
    remove.bind(1, first_entry).bind(2, first_entry + place.integer(2) - 1);
    if (auto fault = remove.run()) return fault;
  }
  SqlQuery remove = query("DELETE FROM sheet WHERE id = ?");
  if (auto fault = remove.bind(1, number).run()) return fault;
  return add_at(number, static_cast<EntryId>(first_entry), sheet, bodies);
}

void RowWriter::add_entry(const EntryRecord& entry, const std::string& body) {
  const std::int64_t id = ++entries_;
  insert(Into::entry, id, sheets_, entry.address, body, row_checksum({id, sheets_}, {entry.address, body}));
  for (const std::string& address : std::set(entry.formerly.begin(), entry.formerly.end())) {
    insert(Into::former_address, address, id);
  }
  for (const FitRecord& fit : entry.fits) {
    const auto [known, is_new] = machines_.try_emplace(
        {fit.make, fit.model}, Machine{fit.make, fit.model, fit.year_from, fit.year_to});
    if (!is_new) widen(known->second, fit);
  }
}

void RowWriter::add_machines() {
  std::set<std::pair<std::string, std::int64_t>> words;
  std::int64_t number = 0;
  for (const auto& [_, machine] : machines_) {
    ++number;
    insert(Into::machine, number, machine.make, machine.model, std::int64_t{machine.year_from},
           std::int64_t{machine.year_to},
           row_checksum({number, machine.year_from, machine.year_to}, {machine.make, machine.model}));
    for (std::string& word : words_of(fold(machine.make + ' ' + machine.model))) {
      words.emplace(std::move(word), number);
    }
  }
  for (const auto& [word, machine] : words) insert(Into::machine_word, word, machine);
}

void RowWriter::add_words(const std::vector<WordRecord>& words) {
  std::set<std::pair<std::vector<std::string>, std::int64_t>> stems;
  std::int64_t number = 0;
  for (const WordRecord& word : words) {
    ++number;
    insert(Into::word, number, word.group, word.word, word.language, std::int64_t{word.main},
           std::int64_t{word.never},
           row_checksum({number, word.main, word.never}, {word.group, word.word, word.language}));
    for (GroupWord& spelling : group_words_of(word)) stems.emplace(std::move(spelling.stems), number);
  }
  for (const auto& [spelling, word] : stems) {
    insert(Into::word_stems, spelling.front(), joined(spelling), word);
  }
}

std::optional<Failure> RowWriter::count_what_is_there(LibraryFacts& facts) {
  SqlQuery of = query(
      "SELECT coalesce((SELECT max(id) FROM sheet), 0), coalesce((SELECT max(id) FROM entry), 0), "
      "coalesce((SELECT max(id) FROM word), 0), "
      "(SELECT coalesce(max(json_extract(r.value, '$[0]')), '') FROM sheet, json_each(body, '$[12]') r)");
  if (!of.next()) return of.fault();
  facts.sheets = of.integer(0);
  facts.entries = of.integer(1);
  facts.words = of.integer(2);
  facts.data_date = of.text(3);  // dates are written so that they sort
  return std::nullopt;
}

void RowWriter::describe(const LibraryFacts& facts) {
  insert(Into::library, facts.name, facts.data_date, facts.sheets, facts.entries, facts.words,
         facts.sqlite_version, facts.xapian_version,
         row_checksum({facts.sheets, facts.entries, facts.words},
                      {facts.name, facts.data_date, facts.sqlite_version, facts.xapian_version}));
}

std::optional<Failure> RowWriter::save(const LibraryFacts& facts) {
  describe(facts);
  if (fault_) return fault_;
  for (auto& query : queries_) query.reset();
  if (auto fault = database_.execute("COMMIT;")) return fault;
  return database_.close();
}

// Sheets that took the place of others are of the same machines, and words stand.
std::optional<Failure> RowWriter::finish(const std::vector<WordRecord>& words, LibraryFacts& facts,
                                         const std::string& file) {
  if (reopened_) {
    if (auto fault = database_.execute("DELETE FROM library")) return fault;
  } else {
    add_words(words);
    add_machines();
  }
  if (auto fault = count_what_is_there(facts)) return fault;
  describe(facts);
  if (fault_) return fault_;
  std::string sql;
  for (const auto items : {schema_indexes(), schema_views()}) {
    for (const SchemaItem& item : items) {
      if (!reopened_) sql.append(item.sql) += ';';
    }
  }
  for (auto& query : queries_) query.reset();
  if (auto fault = database_.execute(sql + "COMMIT;")) return fault;
  if (auto fault = database_.copy_in_order(file)) return fault;
  return database_.close();
}

}  // namespace sheafc
