// SPDX-License-Identifier: GPL-2.0-or-later
// One sheet, typed, as its own file states it: nothing is inherited or looked up yet (compiler/link).
#pragma once

#include <deque>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/sheet/value.h"
#include "compiler/source/source_file.h"

namespace sheafc {

struct FormDeclaration;

// An entry of an assembly or crib, or a row of a table.
struct Entry {
  std::string id;
  std::string_view kind;                                // "fastener", "thread-size"
  const sheaf::KindDeclaration* declaration = nullptr;  // null for a row
  Span place;                                           // its id; of a row, its key cell
  Fields fields;
  bool carries_source = false;  // borrowed: its `source` is that of the sheet it came from
};

// The columns of a table, in the writer's order; a field of a row has the column's declaration.
struct Column {
  enum class Type { figure, thread, size, bearing, text, number, choice };
  std::string_view name;
  Type type = Type::text;
  const sheaf::Unit* unit = nullptr;  // of figures
  const sheaf::FieldDeclaration* declaration = nullptr;
  Span place;
};

struct WordGroup {
  std::string name;
  Fields fields;  // same, de, fr, es, it, never
  Span place;
};

struct Caution {
  std::string name;
  std::string text;
  Fields fields;  // text, about
  Span place;
};

// Owns its fields. Never copied; it may be moved only before something points into it.
struct Sheet {
  std::string name;  // as its file is named
  const FormDeclaration* form = nullptr;
  std::string_view row_kind;        // of a table
  std::string_view key_column;      // of a table
  Fields fields;                    // sheet, title, fits, source ...
  std::vector<Entry> entries;       // as written
  std::vector<std::string> unread;  // ids of entries and rows that could not be read: a fault reported
  std::vector<Column> columns;
  std::vector<WordGroup> words;
  std::vector<Caution> cautions;           // the glossary of a words sheet
  Span place;                              // of its name
  std::string path;                        // relative to the folder of sheets, forward slashes
  std::shared_ptr<const SourceFile> file;  // null if it came from a library

  const Field* keep(Field field) { return &kept_fields.emplace_back(std::move(field)); }
  std::string_view keep(std::string text) { return kept_texts.emplace_back(std::move(text)); }

  std::deque<Field> kept_fields;
  std::deque<std::string> kept_texts;
  std::deque<sheaf::FieldDeclaration> kept_declarations;
};

}  // namespace sheafc
