// SPDX-License-Identifier: GPL-2.0-or-later
// The two baselines hold their index in memory.
#include <sqlite3.h>
#include <xapian.h>

#include "tests/phrases/engine.h"

namespace phrases {
namespace {

constexpr unsigned most_answers = 10;

class PlainXapian : public Engine {
 public:
  explicit PlainXapian(sheaf::Library& library) : database_(std::string(), Xapian::DB_BACKEND_INMEMORY) {
    Xapian::TermGenerator generator;
    generator.set_stemmer(Xapian::Stem("english"));
    library.for_each_entry(
        [&](sheaf::EntryId, const sheaf::EntryRecord& entry, const sheaf::SheetRecord& sheet) {
          Xapian::Document document;
          generator.set_document(document);
          generator.index_text(words_of_entry(entry, sheet));
          database_.add_document(document);
          entries_.push_back({entry.address, entry.fits});
          return true;
        });
    parser_.set_stemmer(Xapian::Stem("english"));
    parser_.set_stemming_strategy(Xapian::QueryParser::STEM_SOME);
  }
  std::string name() const override { return "plain Xapian"; }

  Reply ask(const std::string& question) override try {
    Xapian::Enquire enquire(database_);
    enquire.set_query(parser_.parse_query(question));
    Reply reply;
    const auto found = enquire.get_mset(0, most_answers);
    for (auto hit = found.begin(); hit != found.end(); ++hit) reply.answers.push_back(entries_[*hit - 1]);
    return reply;
  } catch (const Xapian::Error&) {
    return {};
  }

 private:
  Xapian::WritableDatabase database_;
  Xapian::QueryParser parser_;
  std::vector<Given> entries_;
};

class PlainFts : public Engine {
 public:
  explicit PlainFts(sheaf::Library& library) {
    sqlite3_open(":memory:", &database_);
    sqlite3_exec(database_, "CREATE VIRTUAL TABLE entry USING fts5(words); BEGIN", nullptr, nullptr, nullptr);
    sqlite3_stmt* insert = prepare("INSERT INTO entry(rowid, words) VALUES (?, ?)");
    library.for_each_entry(
        [&](sheaf::EntryId, const sheaf::EntryRecord& entry, const sheaf::SheetRecord& sheet) {
          const std::string words = words_of_entry(entry, sheet);
          entries_.push_back({entry.address, entry.fits});
          sqlite3_bind_int64(insert, 1, static_cast<sqlite3_int64>(entries_.size()));
          sqlite3_bind_text(insert, 2, words.c_str(), -1, SQLITE_TRANSIENT);
          sqlite3_step(insert);
          sqlite3_reset(insert);
          return true;
        });
    sqlite3_finalize(insert);
    sqlite3_exec(database_, "COMMIT", nullptr, nullptr, nullptr);
    query_ = prepare("SELECT rowid FROM entry WHERE entry MATCH ? ORDER BY rank LIMIT 10");
  }
  ~PlainFts() override {
    sqlite3_finalize(query_);
    sqlite3_close(database_);
  }
  PlainFts(const PlainFts&) = delete;
  PlainFts& operator=(const PlainFts&) = delete;
  std::string name() const override { return "plain FTS5"; }

  Reply ask(const std::string& question) override {
    Reply reply;
    sqlite3_bind_text(query_, 1, question.c_str(), -1, SQLITE_TRANSIENT);
    while (sqlite3_step(query_) == SQLITE_ROW)
      reply.answers.push_back(entries_[static_cast<std::size_t>(sqlite3_column_int64(query_, 0)) - 1]);
    sqlite3_reset(query_);
    return reply;
  }

 private:
  sqlite3_stmt* prepare(const char* sql) {
    sqlite3_stmt* statement = nullptr;
    sqlite3_prepare_v2(database_, sql, -1, &statement, nullptr);
    return statement;
  }

  sqlite3* database_ = nullptr;
  sqlite3_stmt* query_ = nullptr;
  std::vector<Given> entries_;
};

}  // namespace

std::unique_ptr<Engine> make_plain_xapian(sheaf::Library& library) {
  return std::make_unique<PlainXapian>(library);
}
std::unique_ptr<Engine> make_plain_fts(sheaf::Library& library) {
  return std::make_unique<PlainFts>(library);
}

}  // namespace phrases
