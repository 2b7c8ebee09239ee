// SPDX-License-Identifier: GPL-2.0-or-later
// SQLite for query/library and compiler/emit alone: just what a library file needs of it.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "query/quantity/result.h"

struct sqlite3;
struct sqlite3_stmt;

namespace sheaf {

// A prepared statement. A fault, in binding or in running, ends it and is kept until asked for:
//
//   query.begin().bind(1, address);
//   while (query.next()) use(query.text(0));
//   if (const auto fault = query.fault()) return *fault;
class SqlQuery {
 public:
  SqlQuery(sqlite3* database, std::string_view sql);  // lives no longer than the database
  SqlQuery(const SqlQuery&) = delete;
  SqlQuery& operator=(const SqlQuery&) = delete;
  ~SqlQuery();

  SqlQuery& begin();                                     // resets; what was bound stays bound
  SqlQuery& bind(int parameter, std::string_view text);  // the text stays alive until the next begin()
  SqlQuery& bind(int parameter, std::int64_t number);

  bool next();                   // one row, or no more
  std::optional<Failure> run();  // for what gives no rows; begins anew
  std::optional<Failure> fault() const { return fault_; }

  std::string text(int column) const;
  std::string_view view(int column) const;  // of the text, until the next row
  std::int64_t integer(int column) const;

 private:
  void note(int code);

  sqlite3* database_;
  sqlite3_stmt* statement_ = nullptr;
  std::optional<Failure> fault_;
};

class SqlDatabase {
 public:
  // An immutable file, whatever else lies in it behind the database; or one that nobody else sees, new or
  // not, to be written.
  static Result<SqlDatabase> open_immutable(const std::string& path);
  static Result<SqlDatabase> create(const std::string& path);

  std::optional<Failure> execute(const std::string& sql);
  // A new file of the same content, each table in one piece: how the content came about shows in none of its
  // bytes.
  std::optional<Failure> copy_in_order(const std::string& path);
  sqlite3* handle() const { return handle_.get(); }
  std::optional<Failure> close();  // a fault in closing is one in writing

 private:
  struct Closer {
    void operator()(sqlite3* database) const;
  };
  explicit SqlDatabase(sqlite3* handle) : handle_(handle) {}
  static Result<SqlDatabase> open(const std::string& uri, int flags);
  std::unique_ptr<sqlite3, Closer> handle_;
};

std::string sqlite_version();

}  // namespace sheaf
