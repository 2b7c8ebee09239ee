// SPDX-License-Identifier: GPL-2.0-or-later
#include "tests/bench/bare_load.h"

#include <sqlite3.h>
#include <xapian.h>

#include <atomic>
#include <cstdio>
#include <cstdlib>
#include <string_view>
#include <thread>
#include <vector>

#include "query/library/index_terms.h"
#include "query/library/schema.h"
#include "tests/content/synthetic_fleet.h"

namespace sheaf::bench {
namespace {

void require(bool held, const char* what) {
  if (held) return;
  std::fprintf(stderr, "library_bench: error: %s\n", what);
  std::exit(1);
}

struct Table {
  std::string name;
  int columns = 0;
  std::vector<sqlite3_value*> values;  // of all rows, one after another
};

Table read_table(sqlite3* database, const std::string& name) {
  Table table{name, 0, {}};
  sqlite3_stmt* rows = nullptr;
  require(sqlite3_prepare_v2(database, ("SELECT * FROM " + name).c_str(), -1, &rows, nullptr) == SQLITE_OK,
          "cannot read rows");
  table.columns = sqlite3_column_count(rows);
  while (sqlite3_step(rows) == SQLITE_ROW) {
    for (int i = 0; i < table.columns; ++i) {
      table.values.push_back(sqlite3_value_dup(sqlite3_column_value(rows, i)));
    }
  }
  sqlite3_finalize(rows);
  return table;
}

void execute(sqlite3* database, const std::string& sql) {
  require(sqlite3_exec(database, sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK, "cannot write rows");
}

void insert_rows(sqlite3* database, const Table& table) {
  std::string sql = "INSERT INTO " + table.name + " VALUES (?";
  for (int i = 1; i < table.columns; ++i) sql += ", ?";
  sqlite3_stmt* insert = nullptr;
  sqlite3_prepare_v2(database, (sql + ')').c_str(), -1, &insert, nullptr);
  for (std::size_t at = 0; at < table.values.size();) {
    for (int i = 0; i < table.columns; ++i) sqlite3_bind_value(insert, i + 1, table.values[at++]);
    require(sqlite3_step(insert) == SQLITE_DONE, "cannot write a row");
    sqlite3_reset(insert);
  }
  sqlite3_finalize(insert);
}

constexpr std::size_t entries_in_shard = 800;  // about what the writer has

}  // namespace

struct BareLoad::State {
  std::vector<Table> tables;
  std::vector<std::vector<IndexedEntry>> shards;

  void load_rows(const std::string& path) const;
  void load_shard(const std::string& path, const std::vector<IndexedEntry>& entries) const;
};

BareLoad::BareLoad(const std::string& library, int sheets) : state_(std::make_unique<State>()) {
  sqlite3* database = nullptr;
  require(sqlite3_open_v2(library.c_str(), &database, SQLITE_OPEN_READONLY, nullptr) == SQLITE_OK,
          "cannot open the library");
  for (const SchemaItem& table : schema_tables()) {
    state_->tables.push_back(read_table(database, std::string(table.name)));
  }
  sqlite3_close(database);
  const WordGroups groups(test::synthetic_words());
  for (int i = 0; i < sheets; ++i) {
    const SheetRecord sheet = test::synthetic_sheet(i);
    const EntryIndexer indexer(sheet, groups);
    if (state_->shards.empty() || state_->shards.back().size() >= entries_in_shard) {
      state_->shards.emplace_back();
    }
    for (const EntryRecord& entry : sheet.entries) state_->shards.back().push_back(indexer.index(entry));
  }
}

BareLoad::~BareLoad() {
  for (const Table& table : state_->tables) {
    for (sqlite3_value* value : table.values) sqlite3_value_free(value);
  }
}

void BareLoad::State::load_rows(const std::string& path) const {
  sqlite3* database = nullptr;
  require(sqlite3_open(path.c_str(), &database) == SQLITE_OK, "cannot create rows");
  std::string begin =
      "PRAGMA page_size=4096; PRAGMA journal_mode=OFF; PRAGMA synchronous=OFF; PRAGMA locking_mode=EXCLUSIVE;"
      "PRAGMA temp_store=MEMORY; PRAGMA cache_size=-65536; BEGIN;";
  for (const SchemaItem& table : schema_tables()) begin.append(table.sql) += ';';
  execute(database, begin);
  for (const Table& table : tables) insert_rows(database, table);
  std::string end;
  for (const SchemaItem& index : schema_indexes()) end.append(index.sql) += ';';
  execute(database, end + "COMMIT;");
  sqlite3_close(database);
}

void BareLoad::State::load_shard(const std::string& path, const std::vector<IndexedEntry>& entries) const {
  Xapian::WritableDatabase database(path + ".d", Xapian::DB_CREATE | Xapian::DB_BACKEND_GLASS |
                                                     Xapian::DB_NO_SYNC | Xapian::DB_NO_TERMLIST);
  for (const IndexedEntry& entry : entries) {
    Xapian::Document document;
    for (const Term& term : entry.terms) document.add_term(term.text, term.weight);
    for (const SlotValue& value : entry.values) {
      document.add_value(value.slot, Xapian::sortable_serialise(value.number));
    }
    database.add_document(document);
    for (const std::string& word : entry.spelling) database.add_spelling(word);
  }
  database.commit();
  database.compact(path, Xapian::DBCOMPACT_SINGLE_FILE);
}

void BareLoad::run(const std::string& folder, unsigned threads) const {
  const auto shard_path = [&](std::size_t i) { return folder + "/bare-" + std::to_string(i); };
  std::atomic<std::size_t> next = 0;
  std::vector<std::thread> workers;
  for (unsigned i = 0; i < threads; ++i) {
    workers.emplace_back([&] {
      for (std::size_t shard = next++; shard < state_->shards.size(); shard = next++) {
        state_->load_shard(shard_path(shard), state_->shards[shard]);
      }
    });
  }
  state_->load_rows(folder + "/bare-rows");
  for (std::thread& worker : workers) worker.join();
  Xapian::Database all;
  for (std::size_t i = 0; i < state_->shards.size(); ++i) all.add_database(Xapian::Database(shard_path(i)));
  all.compact(folder + "/bare-index", Xapian::DBCOMPACT_SINGLE_FILE);
}

}  // namespace sheaf::bench
