// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/schema.h"

#include <array>

namespace sheaf {
namespace {

// An id of 0 stands for "none" nowhere: what is absent is NULL. Texts that say nothing are ''.
constexpr std::array<SchemaItem, 15> tables = {{
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
    {"file", R"(CREATE TABLE file(
  id INTEGER PRIMARY KEY,
  path TEXT NOT NULL
) STRICT)"},
    {"source", R"(CREATE TABLE source(
  id INTEGER PRIMARY KEY,
  title TEXT NOT NULL,
  publisher TEXT NOT NULL,
  edition TEXT NOT NULL,
  year INTEGER NOT NULL,
  page TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT)"},
    {"reading", R"(CREATE TABLE reading(
  id INTEGER PRIMARY KEY,
  "on" TEXT NOT NULL,
  "by" TEXT NOT NULL,
  against TEXT NOT NULL,
  second TEXT NOT NULL
) STRICT)"},
    {"fit", R"(CREATE TABLE fit(
  fit_set INTEGER NOT NULL,
  position INTEGER NOT NULL,
  make TEXT NOT NULL,
  model TEXT NOT NULL,
  year_from INTEGER NOT NULL,
  year_to INTEGER NOT NULL,
  market TEXT NOT NULL,
  frame_from TEXT NOT NULL,
  frame_to TEXT NOT NULL,
  note TEXT NOT NULL,
  PRIMARY KEY (fit_set, position)
) STRICT, WITHOUT ROWID)"},
    {"caution", R"(CREATE TABLE caution(
  caution_set INTEGER NOT NULL,
  position INTEGER NOT NULL,
  name TEXT NOT NULL,
  text TEXT NOT NULL,
  PRIMARY KEY (caution_set, position)
) STRICT, WITHOUT ROWID)"},
    {"sheet", R"(CREATE TABLE sheet(
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  form TEXT NOT NULL,
  title TEXT NOT NULL,
  assembly TEXT NOT NULL,
  maker TEXT NOT NULL,
  row_kind TEXT NOT NULL,
  fit_set INTEGER,
  caution_set INTEGER,
  source INTEGER,
  reading INTEGER,
  invented INTEGER NOT NULL,
  file INTEGER NOT NULL,
  line INTEGER NOT NULL,
  first_entry INTEGER NOT NULL,
  entries INTEGER NOT NULL,
  checksum INTEGER NOT NULL
) STRICT)"},
    {"sheet_field", R"(CREATE TABLE sheet_field(
  sheet INTEGER NOT NULL,
  position INTEGER NOT NULL,
  "key" TEXT NOT NULL,
  text TEXT NOT NULL,
  file INTEGER NOT NULL,
  line INTEGER NOT NULL,
  PRIMARY KEY (sheet, position)
) STRICT, WITHOUT ROWID)"},
    {"entry", R"(CREATE TABLE entry(
  id INTEGER PRIMARY KEY,
  sheet INTEGER NOT NULL,
  address TEXT NOT NULL,
  variant TEXT NOT NULL,
  kind TEXT NOT NULL,
  name TEXT NOT NULL,
  fit_set INTEGER,
  caution_set INTEGER,
  source INTEGER,
  reading INTEGER,
  status TEXT NOT NULL,
  withdrawn_on TEXT,
  withdrawn_reason TEXT,
  withdrawn_instead TEXT,
  critical INTEGER NOT NULL,
  file INTEGER NOT NULL,
  line INTEGER NOT NULL,
  checksum INTEGER NOT NULL
) STRICT)"},
    {"field", R"(CREATE TABLE field(
  entry INTEGER NOT NULL,
  position INTEGER NOT NULL,
  "key" TEXT NOT NULL,
  text TEXT NOT NULL,
  dimension TEXT,
  least REAL,
  most REAL,
  file INTEGER NOT NULL,
  line INTEGER NOT NULL,
  PRIMARY KEY (entry, position)
) STRICT, WITHOUT ROWID)"},
    {"former_address", R"(CREATE TABLE former_address(
  entry INTEGER NOT NULL,
  position INTEGER NOT NULL,
  address TEXT NOT NULL,
  PRIMARY KEY (entry, position)
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

constexpr std::array<SchemaItem, 4> indexes = {{
    {"sheet_by_name", "CREATE UNIQUE INDEX sheet_by_name ON sheet(name)"},
    {"entry_by_address", "CREATE INDEX entry_by_address ON entry(address)"},
    {"former_address_by_address", "CREATE INDEX former_address_by_address ON former_address(address)"},
    {"word_by_group", "CREATE INDEX word_by_group ON word(word_group)"},
}};

// Open ends of years are 0 and 9999 here, so that BETWEEN works.
constexpr std::array<SchemaItem, 9> views = {{
    {"sheets", R"(CREATE VIEW sheets AS
SELECT s.name AS sheet, s.form, s.title, s.assembly, s.maker, s.row_kind, s.entries, s.invented,
  o.title AS source_title, o.publisher AS source_publisher, o.edition AS source_edition,
  o.year AS source_year, o.page AS source_page, r."on" AS checked_on, r."by" AS checked_by,
  f.path AS file, s.line
FROM sheet s JOIN file f ON f.id = s.file
  LEFT JOIN source o ON o.id = s.source LEFT JOIN reading r ON r.id = s.reading)"},
    {"entries", R"(CREATE VIEW entries AS
SELECT e.id, e.address, s.name AS sheet, e.variant, e.kind, e.name, e.status, e.critical,
  e.withdrawn_on, e.withdrawn_reason, e.withdrawn_instead, s.invented,
  o.title AS source_title, o.publisher AS source_publisher, o.edition AS source_edition,
  o.year AS source_year, o.page AS source_page, r."on" AS checked_on, r."by" AS checked_by,
  f.path AS file, e.line
FROM entry e JOIN sheet s ON s.id = e.sheet JOIN file f ON f.id = e.file
  LEFT JOIN source o ON o.id = e.source LEFT JOIN reading r ON r.id = e.reading)"},
    {"fits", R"(CREATE VIEW fits AS
SELECT e.id, e.address, e.variant, t.make, t.model, t.year_from,
  CASE t.year_to WHEN 0 THEN 9999 ELSE t.year_to END AS year_to,
  t.market, t.frame_from, t.frame_to, t.note
FROM entry e JOIN fit t ON t.fit_set = e.fit_set)"},
    {"fields", R"(CREATE VIEW fields AS
SELECT e.id, e.address, e.variant, e.kind, e.name, d."key", d.text, d.dimension, d.least, d.most,
  f.path AS file, d.line
FROM field d JOIN entry e ON e.id = d.entry JOIN file f ON f.id = d.file)"},
    {"machines", R"(CREATE VIEW machines AS
SELECT make, model, year_from, CASE year_to WHEN 0 THEN 9999 ELSE year_to END AS year_to FROM machine)"},
    {"torques", R"(CREATE VIEW torques AS
SELECT t.make, t.model, t.year_from, CASE t.year_to WHEN 0 THEN 9999 ELSE t.year_to END AS year_to,
  t.market, t.frame_from, t.frame_to, e.id, e.address, e.variant, e.name, d.text AS torque,
  d.least AS least_newton_metre, d.most AS most_newton_metre,
  (SELECT group_concat(x.text, ', ') FROM field x WHERE x.entry = e.id AND x."key" = 'state') AS state,
  e.withdrawn_on
FROM fit t JOIN entry e ON e.fit_set = t.fit_set JOIN field d ON d.entry = e.id AND d."key" = 'torque')"},
    {"cautions", R"(CREATE VIEW cautions AS
SELECT e.id, e.address, e.variant, c.name AS caution, c.text
FROM entry e JOIN caution c ON c.caution_set = e.caution_set)"},
    {"former_addresses", R"(CREATE VIEW former_addresses AS
SELECT a.address AS former_address, e.address, e.variant, e.id
FROM former_address a JOIN entry e ON e.id = a.entry)"},
    {"words", R"(CREATE VIEW words AS
SELECT word_group, word, language, main, never FROM word)"},
}};

}  // namespace

std::span<const SchemaItem> schema_tables() { return tables; }
std::span<const SchemaItem> schema_indexes() { return indexes; }
std::span<const SchemaItem> schema_views() { return views; }

}  // namespace sheaf
