// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/schema.h"

#include <array>

namespace sheaf {
namespace {

// Bodies are JSON: row_body.cc writes and reads them, FORMAT.md tells what they hold. Texts that say nothing
// are ''.
constexpr std::array<SchemaItem, 8> tables = {{
    {"library", R"(CREATE TABLE library(
  name TEXT NOT NULL,
  data_date TEXT NOT NULL,
  sheets INTEGER NOT NULL,
  entries INTEGER NOT NULL,
  words INTEGER NOT NULL,
  sqlite_version TEXT NOT NULL,
  xapian_version TEXT NOT NULL,
  checksum INTEGER NOT NULL
) STRICT)"},
    {"sheet", R"(CREATE TABLE sheet(
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  first_entry INTEGER NOT NULL,
  entries INTEGER NOT NULL,
  body TEXT NOT NULL,
  checksum INTEGER NOT NULL
) STRICT)"},
    {"entry", R"(CREATE TABLE entry(
  id INTEGER PRIMARY KEY,
  sheet INTEGER NOT NULL,
  address TEXT NOT NULL,
  body TEXT NOT NULL,
  checksum INTEGER NOT NULL
) STRICT)"},
    {"former_address", R"(CREATE TABLE former_address(
  address TEXT NOT NULL,
  entry INTEGER NOT NULL,
  PRIMARY KEY (address, entry)
) STRICT, WITHOUT ROWID)"},
    {"word", R"(CREATE TABLE word(
  id INTEGER PRIMARY KEY,
  word_group TEXT NOT NULL,
  word TEXT NOT NULL,
  language TEXT NOT NULL,
  main INTEGER NOT NULL,
  never INTEGER NOT NULL,
  checksum INTEGER NOT NULL
) STRICT)"},
    {"word_stems", R"(CREATE TABLE word_stems(
  first_stem TEXT NOT NULL,
  stems TEXT NOT NULL,
  word INTEGER NOT NULL,
  PRIMARY KEY (first_stem, stems, word)
) STRICT, WITHOUT ROWID)"},
    {"machine", R"(CREATE TABLE machine(
  id INTEGER PRIMARY KEY,
  make TEXT NOT NULL,
  model TEXT NOT NULL,
  year_from INTEGER NOT NULL,
  year_to INTEGER NOT NULL,
  checksum INTEGER NOT NULL
) STRICT)"},
    {"machine_word", R"(CREATE TABLE machine_word(
  word TEXT NOT NULL,
  machine INTEGER NOT NULL,
  PRIMARY KEY (word, machine)
) STRICT, WITHOUT ROWID)"},
}};

constexpr std::array<SchemaItem, 3> indexes = {{
    {"sheet_by_name", "CREATE UNIQUE INDEX sheet_by_name ON sheet(name)"},
    {"entry_by_address", "CREATE INDEX entry_by_address ON entry(address)"},
    {"word_by_group", "CREATE INDEX word_by_group ON word(word_group)"},
}};

// Open ends of years are 0 and 9999 here, so that BETWEEN works. What stands at the end of a record and says
// nothing is not there, and so is NULL to json_extract. Those about machines begin with the sheets, of which
// most are passed over.
constexpr std::array<SchemaItem, 9> views = {{
    {"sheets", R"(CREATE VIEW sheets AS
SELECT s.name AS sheet, json_extract(s.body, '$[0]') AS form, json_extract(s.body, '$[1]') AS title,
  json_extract(s.body, '$[2]') AS assembly, json_extract(s.body, '$[3]') AS maker,
  json_extract(s.body, '$[4]') AS row_kind, s.entries, json_extract(s.body, '$[6]') AS invented,
  json_extract(s.body, '$[11][0][0]') AS source_title, json_extract(s.body, '$[11][0][1]') AS source_publisher,
  json_extract(s.body, '$[11][0][2]') AS source_edition, json_extract(s.body, '$[11][0][3]') AS source_year,
  json_extract(s.body, '$[11][0][4]') AS source_page,
  json_extract(s.body, '$[12][0][0]') AS checked_on, json_extract(s.body, '$[12][0][1]') AS checked_by,
  json_extract(s.body, '$[8][0]') AS file, json_extract(s.body, '$[5]') AS line
FROM sheet s)"},
    {"entries", R"(CREATE VIEW entries AS
SELECT e.id, e.address, s.name AS sheet, coalesce(json_extract(e.body, '$[5]'), '') AS variant,
  coalesce(json_extract(e.body, '$[0]'), '') AS kind, coalesce(json_extract(e.body, '$[1]'), '') AS name,
  coalesce(json_extract(e.body, '$[4]'), '') AS status, coalesce(json_extract(e.body, '$[6]'), 0) AS critical,
  json_extract(e.body, '$[13][0][0]') AS withdrawn_on, json_extract(e.body, '$[13][0][1]') AS withdrawn_reason,
  json_extract(e.body, '$[13][0][2]') AS withdrawn_instead, json_extract(s.body, '$[6]') AS invented,
  json_extract(o.value, '$[0]') AS source_title, json_extract(o.value, '$[1]') AS source_publisher,
  json_extract(o.value, '$[2]') AS source_edition, json_extract(o.value, '$[3]') AS source_year,
  json_extract(o.value, '$[4]') AS source_page,
  json_extract(r.value, '$[0]') AS checked_on, json_extract(r.value, '$[1]') AS checked_by,
  json_extract(s.body, '$[8][' || coalesce(json_extract(e.body, '$[11]'), 0) || ']') AS file,
  coalesce(json_extract(e.body, '$[2]'), 0) AS line
FROM entry e JOIN sheet s ON s.id = e.sheet
  JOIN json_each(s.body, '$[11]') o ON o.key = coalesce(json_extract(e.body, '$[9]'), 0)
  JOIN json_each(s.body, '$[12]') r ON r.key = coalesce(json_extract(e.body, '$[10]'), 0))"},
    {"fits", R"(CREATE VIEW fits AS
SELECT e.id, e.address, coalesce(json_extract(e.body, '$[5]'), '') AS variant,
  json_extract(t.value, '$[0]') AS make, json_extract(t.value, '$[1]') AS model,
  json_extract(t.value, '$[2]') AS year_from,
  CASE json_extract(t.value, '$[3]') WHEN 0 THEN 9999 ELSE json_extract(t.value, '$[3]') END AS year_to,
  json_extract(t.value, '$[4]') AS market, json_extract(t.value, '$[5]') AS frame_from,
  json_extract(t.value, '$[6]') AS frame_to, json_extract(t.value, '$[7]') AS note
FROM sheet s CROSS JOIN json_each(s.body, '$[9]') f CROSS JOIN json_each(f.value) t CROSS JOIN entry e
  ON e.id BETWEEN s.first_entry AND s.first_entry + s.entries - 1
  AND coalesce(json_extract(e.body, '$[7]'), 0) = f.key)"},
    {"fields", R"(CREATE VIEW fields AS
SELECT e.id, e.address, coalesce(json_extract(e.body, '$[5]'), '') AS variant, json_extract(e.body, '$[0]') AS kind,
  json_extract(e.body, '$[1]') AS name, json_extract(d.value, '$[0]') AS "key",
  coalesce(json_extract(d.value, '$[1]'), '') AS text, json_extract(d.value, '$[4]') AS dimension,
  CAST(json_extract(d.value, '$[5]') AS REAL) AS least, CAST(json_extract(d.value, '$[6]') AS REAL) AS most,
  json_extract(s.body, '$[8][' || coalesce(json_extract(d.value, '$[3]'), 0) || ']') AS file,
  coalesce(json_extract(d.value, '$[2]'), 0) AS line
FROM entry e JOIN json_each(e.body, '$[3]') d JOIN sheet s ON s.id = e.sheet)"},
    {"machines", R"(CREATE VIEW machines AS
SELECT make, model, year_from, CASE year_to WHEN 0 THEN 9999 ELSE year_to END AS year_to FROM machine)"},
    {"torques", R"(CREATE VIEW torques AS
SELECT json_extract(t.value, '$[0]') AS make, json_extract(t.value, '$[1]') AS model,
  json_extract(t.value, '$[2]') AS year_from,
  CASE json_extract(t.value, '$[3]') WHEN 0 THEN 9999 ELSE json_extract(t.value, '$[3]') END AS year_to,
  json_extract(t.value, '$[4]') AS market, json_extract(t.value, '$[5]') AS frame_from,
  json_extract(t.value, '$[6]') AS frame_to, e.id, e.address, coalesce(json_extract(e.body, '$[5]'), '') AS variant,
  json_extract(e.body, '$[1]') AS name, json_extract(d.value, '$[1]') AS torque,
  CAST(json_extract(d.value, '$[5]') AS REAL) AS least_newton_metre,
  CAST(json_extract(d.value, '$[6]') AS REAL) AS most_newton_metre,
  (SELECT group_concat(json_extract(x.value, '$[1]'), ', ') FROM json_each(e.body, '$[3]') x
    WHERE json_extract(x.value, '$[0]') = 'state') AS state,
  json_extract(e.body, '$[13][0][0]') AS withdrawn_on
FROM sheet s CROSS JOIN json_each(s.body, '$[9]') f CROSS JOIN json_each(f.value) t CROSS JOIN entry e
  ON e.id BETWEEN s.first_entry AND s.first_entry + s.entries - 1
  AND coalesce(json_extract(e.body, '$[7]'), 0) = f.key
  CROSS JOIN json_each(e.body, '$[3]') d ON json_extract(d.value, '$[0]') = 'torque')"},
    {"cautions", R"(CREATE VIEW cautions AS
SELECT e.id, e.address, coalesce(json_extract(e.body, '$[5]'), '') AS variant,
  json_extract(c.value, '$[0]') AS caution, json_extract(c.value, '$[1]') AS text
FROM entry e JOIN sheet s ON s.id = e.sheet
  JOIN json_each(s.body, '$[10][' || coalesce(json_extract(e.body, '$[8]'), 0) || ']') c)"},
    {"former_addresses", R"(CREATE VIEW former_addresses AS
SELECT a.address AS former_address, e.address, coalesce(json_extract(e.body, '$[5]'), '') AS variant, e.id
FROM former_address a JOIN entry e ON e.id = a.entry)"},
    {"words", R"(CREATE VIEW words AS
SELECT word_group, word, language, main, never FROM word)"},
}};

}  // namespace

std::span<const SchemaItem> schema_tables() { return tables; }
std::span<const SchemaItem> schema_indexes() { return indexes; }
std::span<const SchemaItem> schema_views() { return views; }

}  // namespace sheaf
