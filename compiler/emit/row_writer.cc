// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/emit/row_writer.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "query/library/field_band.h"
#include "query/library/fold.h"
#include "query/library/record_checksum.h"
#include "query/library/schema.h"
#include "query/library/trailer.h"
#include "query/library/word_groups.h"

namespace sheafc {
namespace {

using namespace sheaf;

// In the order of RowWriter::Into, with the number of values in a row.
constexpr std::pair<std::string_view, int> tables[] = {
    {"file", 2},   {"source", 7},      {"reading", 5}, {"fit", 10},         {"caution", 4},
    {"sheet", 17}, {"sheet_field", 6}, {"entry", 18},  {"field", 9},        {"former_address", 3},
    {"word", 7},   {"word_stems", 3},  {"machine", 6}, {"machine_word", 2}, {"library", 8}};

std::string insertion(std::string_view table, int values) {
  std::string sql = "INSERT INTO " + std::string(table) + " VALUES (?";
  for (int i = 1; i < values; ++i) sql += ", ?";
  return sql + ')';
}

void bind(SqlQuery& row, int at, const std::string& text) { row.bind(at, std::string_view(text)); }
void bind(SqlQuery& row, int at, std::int64_t number) { row.bind(at, number); }
void bind(SqlQuery& row, int at, double number) {  // an open end is NULL
  std::isfinite(number) ? row.bind(at, std::optional(number)) : row.bind_null(at);
}
template <typename Value>
void bind(SqlQuery& row, int at, const std::optional<Value>& value) {
  value ? bind(row, at, *value) : static_cast<void>(row.bind_null(at));
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
  SqlQuery files = writer.query("SELECT path, id FROM file");
  while (files.next()) writer.files_.emplace(files.text(0), files.integer(1));
  if (files.fault()) return *files.fault();
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
  (bind(row, ++at, values), ...);
  auto fault = row.run();
  if (fault && !fault_) fault_ = std::move(fault);
}

template <typename Record, typename InsertRows>
RowWriter::Reference RowWriter::number_of(const Record& record, Numbered<Record>& known,
                                          InsertRows insert_rows) {
  if (record == Record{}) return std::nullopt;
  const auto found = std::ranges::find(known.of_this_sheet, record, &std::pair<Record, std::int64_t>::first);
  if (found != known.of_this_sheet.end()) return found->second;
  known.of_this_sheet.emplace_back(record, ++known.last);
  insert_rows(known.last);
  return known.last;
}

std::int64_t RowWriter::file_number(const std::string& path) {
  if (last_file_.second != 0 && path == last_file_.first) return last_file_.second;  // as of most fields
  const auto [known, is_new] = files_.try_emplace(path, static_cast<std::int64_t>(files_.size()) + 1);
  if (is_new) insert(Into::file, known->second, path);
  last_file_ = *known;
  return known->second;
}

RowWriter::Reference RowWriter::source_number(const SourceRecord& source) {
  return number_of(source, sources_, [&](std::int64_t number) {
    insert(Into::source, number, source.title, source.publisher, source.edition, std::int64_t{source.year},
           source.page, source.note);
  });
}

RowWriter::Reference RowWriter::reading_number(const CheckRecord& reading) {
  return number_of(reading, readings_, [&](std::int64_t number) {
    insert(Into::reading, number, reading.on, reading.by, reading.against, reading.second);
    newest_date_ = std::max(newest_date_, reading.on);  // dates are written so that they sort
  });
}

RowWriter::Reference RowWriter::fit_set_number(const std::vector<FitRecord>& fits) {
  return number_of(fits, fit_sets_, [&](std::int64_t number) {
    std::int64_t position = 0;
    for (const FitRecord& fit : fits) {
      insert(Into::fit, number, position++, fit.make, fit.model, std::int64_t{fit.year_from},
             std::int64_t{fit.year_to}, fit.market, fit.frame_from, fit.frame_to, fit.note);
    }
  });
}

RowWriter::Reference RowWriter::caution_set_number(const std::vector<CautionRecord>& cautions) {
  return number_of(cautions, caution_sets_, [&](std::int64_t number) {
    std::int64_t position = 0;
    for (const CautionRecord& caution : cautions) {
      insert(Into::caution, number, position++, caution.name, caution.text);
    }
  });
}

// One after another, so that every compiler writes the rows in the same order.
template <typename Record>
RowWriter::Shared RowWriter::shared_by(const Record& record) {
  Shared shared;
  shared.fits = fit_set_number(record.fits);
  shared.cautions = caution_set_number(record.cautions);
  shared.source = source_number(record.source);
  shared.reading = reading_number(record.checked);
  shared.file = file_number(record.place.file);
  return shared;
}

std::optional<Failure> RowWriter::add(const SheetRecord& sheet) {
  sources_.of_this_sheet.clear();
  readings_.of_this_sheet.clear();
  fit_sets_.of_this_sheet.clear();
  caution_sets_.of_this_sheet.clear();
  const EntryId first_entry = entries_ + 1;
  const auto count = static_cast<std::int64_t>(sheet.entries.size());
  const Shared shared = shared_by(sheet);
  ++sheets_;
  insert(Into::sheet, sheets_, sheet.name, sheet.form, sheet.title, sheet.assembly, sheet.maker,
         sheet.row_kind, shared.fits, shared.cautions, shared.source, shared.reading,
         std::int64_t{sheet.invented}, shared.file, std::int64_t{sheet.place.line}, std::int64_t{first_entry},
         count, checksum_of(first_entry, count, sheet));
  std::int64_t position = 0;
  for (const FieldRecord& field : sheet.fields) {
    insert(Into::sheet_field, sheets_, position++, field.key, field.text, file_number(field.place.file),
           std::int64_t{field.place.line});
  }
  for (const EntryRecord& entry : sheet.entries) add_entry(entry);
  return fault_;
}

Result<RowWriter::Range> RowWriter::numbers_in(std::string_view column, std::int64_t sheet, const Range& entries) {
  const std::string name(column);
  SqlQuery all = query("SELECT min(n), max(n) FROM (SELECT " + name + " AS n FROM sheet WHERE id = ?1 UNION ALL SELECT " +
                       name + " FROM entry WHERE id BETWEEN ?2 AND ?3)");
  all.begin().bind(1, sheet).bind(2, entries.first).bind(3, entries.last);
  if (!all.next()) return all.fault().value_or(Failure{"no answer"});
  return all.is_null(0) ? Range{} : Range{all.integer(0), all.integer(1)};
}

// Its rows go, and the counters back to where they stood before it.
std::optional<Failure> RowWriter::replace(const SheetRecord& sheet) {
  SqlQuery place = query("SELECT id, first_entry, entries FROM sheet WHERE name = ?");
  if (!place.begin().bind(1, sheet.name).next()) return place.fault().value_or(Failure{"there is no sheet " + sheet.name});
  const Range own{place.integer(0), place.integer(0)};
  const Range entries{place.integer(1), place.integer(1) + place.integer(2) - 1};
  std::vector<std::pair<std::string, Range>> rows = {
      {"sheet WHERE id", own},        {"sheet_field WHERE sheet", own},        {"entry WHERE id", entries},
      {"field WHERE entry", entries}, {"former_address WHERE entry", entries},
  };
  const std::pair<std::string_view, std::int64_t*> shared[] = {{"fit_set", &fit_sets_.last},
                                                               {"caution_set", &caution_sets_.last},
                                                               {"source", &sources_.last},
                                                               {"reading", &readings_.last}};
  for (const auto& [column, counter] : shared) {
    const auto numbers = numbers_in(column, own.first, entries);
    if (!numbers) return numbers.failure();
    *counter = numbers->first - 1;
    const std::string_view key = column.ends_with("_set") ? column : "id";
    const std::string table(column.substr(0, column.find('_')));
    rows.emplace_back(table + " WHERE " + std::string(key), *numbers);
  }
  for (const auto& [of, range] : rows) {
    SqlQuery remove = query("DELETE FROM " + of + " BETWEEN ? AND ?");
    if (auto fault = remove.begin().bind(1, range.first).bind(2, range.last).run()) return fault;
  }
  sheets_ = own.first - 1;
  entries_ = static_cast<EntryId>(entries.first - 1);
  return add(sheet);
}

void RowWriter::add_entry(const EntryRecord& entry) {
  std::optional<std::string> withdrawn_on, withdrawn_reason, withdrawn_instead;
  for (const WithdrawalRecord& withdrawn : entry.withdrawn) {
    withdrawn_on = withdrawn.on;
    withdrawn_reason = withdrawn.reason;
    withdrawn_instead = withdrawn.instead;
  }
  const EntryId id = ++entries_;
  const Shared shared = shared_by(entry);
  insert(Into::entry, std::int64_t{id}, sheets_, entry.address, entry.variant, entry.kind, entry.name,
         shared.fits, shared.cautions, shared.source, shared.reading, entry.status, withdrawn_on,
         withdrawn_reason, withdrawn_instead, std::int64_t{entry.critical}, shared.file,
         std::int64_t{entry.place.line}, checksum_of(id, entry));
  std::int64_t position = 0;
  for (const FieldRecord& field : entry.fields) add_field(entry, field, position++);
  position = 0;
  for (const std::string& address : entry.formerly) {
    insert(Into::former_address, std::int64_t{id}, position++, address);
  }
  for (const FitRecord& fit : entry.fits) note_machine(fit);
}

void RowWriter::add_field(const EntryRecord& entry, const FieldRecord& field, std::int64_t position) {
  std::optional<std::string> dimension;
  std::optional<double> least, most;
  if (const auto bands = bands_of(entry.kind, field); !bands.empty()) {
    dimension = std::string(name_of(bands.front().dimension));
    least = bands.front().least;
    most = bands.front().most;
  }
  insert(Into::field, std::int64_t{entries_}, position, field.key, field.text, dimension, least, most,
         file_number(field.place.file), std::int64_t{field.place.line});
}

void RowWriter::note_machine(const FitRecord& fit) {
  const auto [known, is_new] =
      machines_.try_emplace({fit.make, fit.model}, Machine{fit.make, fit.model, fit.year_from, fit.year_to});
  if (!is_new) widen(known->second, fit);
}

void RowWriter::add_machines() {
  std::set<std::pair<std::string, std::int64_t>> words;
  std::int64_t number = 0;
  for (const auto& [_, machine] : machines_) {
    ++number;
    insert(Into::machine, number, machine.make, machine.model, std::int64_t{machine.year_from},
           std::int64_t{machine.year_to}, checksum_of(number, machine));
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
           std::int64_t{word.never}, checksum_of(number, word));
    for (GroupWord& spelling : group_words_of(word)) stems.emplace(std::move(spelling.stems), number);
  }
  for (const auto& [spelling, word] : stems) {
    insert(Into::word_stems, spelling.front(), joined(spelling), word);
  }
}

// For a library in which sheets were replaced by others that are alike: words and machines stand.
std::optional<Failure> RowWriter::count_what_is_there() {
  SqlQuery counts = query("SELECT (SELECT count(*) FROM sheet), (SELECT count(*) FROM entry), "
                          "(SELECT coalesce(max(\"on\"), '') FROM reading)");
  if (!counts.next()) return counts.fault();
  sheets_ = counts.integer(0);
  entries_ = static_cast<EntryId>(counts.integer(1));
  newest_date_ = counts.text(2);
  return database_.execute("DELETE FROM library");
}

std::optional<Failure> RowWriter::finish(const std::vector<WordRecord>& words, LibraryFacts& facts,
                                         const std::string& file) {
  if (reopened_) {
    if (auto fault = count_what_is_there()) return fault;
  } else {
    add_words(words);
    add_machines();
  }
  facts.data_date = newest_date_;
  facts.sheets = sheets_;
  facts.entries = entries_;
  facts.words = static_cast<std::int64_t>(words.size());
  insert(Into::library, facts.name, facts.data_date, facts.sheets, facts.entries, facts.words,
         facts.sqlite_version, facts.xapian_version, checksum_of(facts));
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
