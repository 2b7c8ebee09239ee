// SPDX-License-Identifier: GPL-2.0-or-later
// Any SQLite tool reads a library, and none writes to it: with the sqlite3 shell and with Python's own
// client.
#include <doctest/doctest.h>

#include <cstdio>
#include <set>

#include "tests/compiler/emit/written_library.h"
#include "tests/content/files.h"
#include "tests/content/random_content.h"
#include "tests/content/synthetic_fleet.h"

using namespace sheaf;

namespace {

struct Ran {
  std::string output;  // of both streams
  int status = 0;
};

Ran run(const std::string& command) {
  Ran ran;
  FILE* pipe = popen((command + " 2>&1").c_str(), "r");
  for (int byte = fgetc(pipe); byte != EOF; byte = fgetc(pipe)) ran.output += static_cast<char>(byte);
  ran.status = pclose(pipe);
  return ran;
}

// The SQL on standard input, as it stands.
Ran sqlite3_shell(const test::TemporaryFolder& folder, const std::string& path, const std::string& sql) {
  test::write_file(folder / "query.sql", sql);
  return run("sqlite3 -batch '" + path + "' < '" + (folder / "query.sql") + "'");
}

// The n-th block of SQL in FORMAT.md.
std::string documented_query(int number) {
  const std::string document = test::read_file("query/library/FORMAT.md");
  std::size_t at = 0;
  for (int i = 0; i <= number; ++i) at = document.find("```sql\n", at) + 7;
  return document.substr(at, document.find("```", at) - at);
}

LibraryContent fleet_with_a_muleback() {
  LibraryContent content{"fleet", {}, {}};
  for (int i = 0; i < 6; ++i) content.sheets.push_back(test::synthetic_sheet(i));
  for (EntryRecord& entry : content.sheets[2].entries) {
    entry.fits = {{"Haldrek", "Muleback 380", 2011, 0, "", "", "", ""}};
  }
  for (EntryRecord& entry : content.sheets[4].entries) {
    entry.fits = {{"Haldrek", "Muleback 380", 2014, 2016, "", "", "", ""}};
  }
  return content;
}

std::string field_of(const EntryRecord& entry, const std::string& key) {
  const auto found = std::ranges::find(entry.fields, key, &FieldRecord::key);
  return found == entry.fields.end() ? "" : found->text;
}

}  // namespace

TEST_CASE("the documented query lists all torques of a machine and a year") {
  const test::TemporaryFolder folder;
  const LibraryContent content = fleet_with_a_muleback();
  test::write(content, folder / "made.sheaf");
  std::string expected;
  for (const EntryRecord& entry : content.sheets[2].entries) {
    if (field_of(entry, "torque").empty()) continue;
    expected += entry.name + '|' + field_of(entry, "torque") + '|' + field_of(entry, "state") + '|' +
                entry.address + "|\n";
  }
  CHECK(expected.size() > 100);
  CHECK(sqlite3_shell(folder, folder / "made.sheaf", documented_query(0)).output == expected);
}

TEST_CASE("Python's client finds the same") {
  const test::TemporaryFolder folder;
  test::write(fleet_with_a_muleback(), folder / "made.sheaf");
  test::write_file(folder / "client.py",
                   "import sqlite3, sys\n"
                   "rows = sqlite3.connect(sys.argv[1]).execute(open(sys.argv[2]).read())\n"
                   "print('\\n'.join('|'.join(row) for row in rows))\n");
  const Ran shell = sqlite3_shell(folder, folder / "made.sheaf", documented_query(0));
  const Ran python =
      run("python3 " + (folder / "client.py") + ' ' + (folder / "made.sheaf") + ' ' + (folder / "query.sql"));
  CHECK(python.output == shell.output);
}

TEST_CASE("bands can be asked for, in SI units") {
  const test::TemporaryFolder folder;
  LibraryContent content = fleet_with_a_muleback();
  content.sheets[0].entries[0].fields = {{"torque", "61 ± 2 N·m", {"a.yaml", 7}}};
  test::write(content, folder / "made.sheaf");
  const Ran ran = sqlite3_shell(folder, folder / "made.sheaf", documented_query(1));
  CHECK(ran.output.find("|61 ± 2 N·m|a.yaml|7\n") != std::string::npos);
  const Ran band = sqlite3_shell(folder, folder / "made.sheaf",
                                 "SELECT least, most, dimension FROM fields WHERE text = '61 ± 2 N·m';");
  CHECK(band.output == "59.0|63.0|torque\n");
}

TEST_CASE("every view answers, and SQLite finds nothing wrong") {
  const test::TemporaryFolder folder;
  test::write(test::random_content(71, 30), folder / "made.sheaf");
  for (const char* view : {"sheets", "entries", "fits", "fields", "machines", "torques", "cautions",
                           "former_addresses", "words"}) {
    const Ran ran =
        sqlite3_shell(folder, folder / "made.sheaf", "SELECT count(*) > 0 FROM " + std::string(view) + ';');
    INFO(view);
    CHECK(ran.output == "1\n");
  }
  CHECK(sqlite3_shell(folder, folder / "made.sheaf", "PRAGMA integrity_check;").output == "ok\n");
}

TEST_CASE("no ordinary writer changes a byte") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  test::write(test::random_content(72, 10), path);
  const std::string before = test::read_file(path);
  for (const char* sql :
       {"CREATE TABLE mine(a);", "DELETE FROM entry;", "UPDATE entry SET body = 'x';", "VACUUM;",
        "PRAGMA journal_mode=WAL;", "PRAGMA user_version=7; PRAGMA application_id=1;", "DROP TABLE entry;"}) {
    sqlite3_shell(folder, path, sql);
    INFO(sql);
    CHECK(test::read_file(path) == before);
  }
  CHECK(sqlite3_shell(folder, path, "DELETE FROM entry;").output.find("readonly") != std::string::npos);
  CHECK(test::refusal(path) == "");
}
