// SPDX-License-Identifier: GPL-2.0-or-later
// What a library holds, as plain records: the compiler writes them, the query program reads them
// back. Every text is in the canonical spelling of its type, so a value read here can be parsed by
// the same functions that the compiler used (query/quantity, query/trade).
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace sheaf {

// Entries are numbered from 1, in the order of the sheets and of the entries on each.
using EntryId = std::uint32_t;

// Where something is written: a path relative to the root of the sheets, and a line from 1.
struct Place {
  std::string file;
  int line = 0;
  friend bool operator==(const Place&, const Place&) = default;
};

// One value of one field. A field with several values has several records with the same key; the
// field of a record has a dotted key: "superseded-by.number"; records in a list are numbered from 1:
// "other-numbers.1.supplier".
struct FieldRecord {
  std::string key;
  std::string text;
  Place place;  // where this very value is written: another sheet's, if it was inherited
  friend bool operator==(const FieldRecord&, const FieldRecord&) = default;
};

// Years 0 are open ends: from 2016 on is {2016, 0}.
struct FitRecord {
  std::string make, model;
  int year_from = 0, year_to = 0;
  std::string market;
  std::string frame_from, frame_to;  // both empty, or either end open
  std::string note;
  friend bool operator==(const FitRecord&, const FitRecord&) = default;
};

struct SourceRecord {
  std::string title, publisher, edition, page, note;
  int year = 0;
  friend bool operator==(const SourceRecord&, const SourceRecord&) = default;
};

struct CheckRecord {
  std::string on, by, against, second;  // on: 2026-10-02
  friend bool operator==(const CheckRecord&, const CheckRecord&) = default;
};

// The caution in words, as the glossary gives it.
struct CautionRecord {
  std::string name, text;
  friend bool operator==(const CautionRecord&, const CautionRecord&) = default;
};

struct WithdrawalRecord {
  std::string on, reason, instead;  // instead: an address, or empty
  friend bool operator==(const WithdrawalRecord&, const WithdrawalRecord&) = default;
};

// One entry as it holds for some machines. Variants of an entry are entries of their own with the
// same address and other fits.
struct EntryRecord {
  std::string address;  // "sorvane-41-rod/top-plug"
  std::string variant;  // "2011..2012", "frames HK4-000100..HK4-004999"; empty if it has none
  std::string kind;     // KindDeclaration::name, or a RowKind::name for a row of a table
  std::string name;
  std::vector<FieldRecord> fields;      // in declared order
  std::vector<FitRecord> fits;          // its own if it has any, else its sheet's
  std::vector<CautionRecord> cautions;  // its own and its sheet's, each once
  SourceRecord source;
  CheckRecord checked;
  std::string status;                       // empty, maker-paper, measured, second-hand, disputed
  std::vector<WithdrawalRecord> withdrawn;  // none or one
  std::vector<std::string> formerly;        // old addresses
  bool critical = false;
  Place place;
  std::string library;  // Library::label() of the one it was read from
  friend bool operator==(const EntryRecord&, const EntryRecord&) = default;
};

struct SheetRecord {
  std::string name;  // "sorvane-41-rod"
  std::string form;  // assembly, table, words, crib
  std::string title;
  std::string assembly;  // for form assembly
  std::string maker;
  std::string row_kind;             // for form table
  std::vector<FieldRecord> fields;  // tube, bore, identify, notes, units of the crib ...
  std::vector<FitRecord> fits;
  SourceRecord source;
  CheckRecord checked;
  std::vector<CautionRecord> cautions;
  std::vector<EntryRecord> entries;
  bool invented = false;  // demonstration data: every answer says so
  Place place;
  std::string library;  // Library::label() of the one it was read from
  friend bool operator==(const SheetRecord&, const SheetRecord&) = default;
};

// Words that mean the same. The first is the main one; `language` is en, de, fr, es or it.
struct WordRecord {
  std::string group;  // "fork-cap"
  std::string word;   // "top cap"
  std::string language;
  bool main = false;
  bool never = false;  // a false friend: must not be taken as this group
  friend bool operator==(const WordRecord&, const WordRecord&) = default;
};

struct LibraryContent {
  std::string name;  // "orrindale"
  std::vector<SheetRecord> sheets;
  std::vector<WordRecord> words;
  friend bool operator==(const LibraryContent&, const LibraryContent&) = default;
};

}  // namespace sheaf
