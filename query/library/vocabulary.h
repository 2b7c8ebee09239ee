// SPDX-License-Identifier: GPL-2.0-or-later
// The kinds of entry and the fields of each, declared once (vocabulary.cc). The reader of sheets, the
// JSON Schema, the authoring manual, the library's rows and the answers all follow this table.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "query/quantity/unit.h"

namespace sheaf {

// How the text of a field is read. Each has one canonical spelling, in which the library keeps it.
enum class ValueType {
  text,        // one line of words
  choice,      // one of `choices`
  flag,        // yes or no
  integer,     // a whole number, 0 or more
  date,        // 2026-10-02
  years,       // 2013, 2011..2015, 2016.., ..2010
  frames,      // frame numbers: HK4-000100..HK4-004999, either end may be open
  count,       // 2, 1 per leg
  figure,      // a quantity with its unit: see query/quantity/figure.h
  torque,      // the same, with stages: 20 N·m, 40 N·m, + 90°
  interval,    // figures of distance or time: 10 000 km or 12 months
  thread,      // M8x1.25: see query/trade/designation.h
  drive,       // hexagon 27 mm
  size,        // 41x54x11
  bearing,     // 6203-2RS C3
  reference,   // the address of an entry: sheet/entry, or entry on the same sheet
  pattern,     // 1-4-2-3: the order in which a group is tightened
  record,      // a mapping of `fields`
  allowances,  // rule: reason
  variants,    // a list of mappings: when it applies, and the fields that differ
};

struct FieldDeclaration {
  std::string_view key;
  ValueType type = ValueType::text;
  std::string_view help;  // one sentence for the writer
  std::string_view example = {};
  std::optional<Dimension> dimension = {};  // figures: the only dimension allowed
  std::span<const std::string_view> choices = {};
  bool required = false;
  bool many = false;                              // a list of values is allowed as well as one
  std::span<const FieldDeclaration> fields = {};  // of a record
};

struct KindDeclaration {
  std::string_view name;     // "fastener": in words, JSON, --kind
  std::string_view section;  // "fasteners": the sheet's key under which such entries stand
  std::string_view help;
  std::span<const FieldDeclaration> fields;  // its own, before those common to every entry
};

std::span<const KindDeclaration> all_kinds();
const KindDeclaration* kind_named(std::string_view name);
const KindDeclaration* kind_of_section(std::string_view section);

// The fields that every kind of entry may have.
std::span<const FieldDeclaration> common_fields();
// The field of that kind with that key, its own or common; null if there is none.
const FieldDeclaration* field_of(const KindDeclaration& kind, std::string_view key);

// Records that stand on sheets as well as on entries.
std::span<const FieldDeclaration> source_fields();
std::span<const FieldDeclaration> check_fields();
std::span<const FieldDeclaration> fit_fields();

// The assemblies a sheet may be of, and the kinds of row a table may have.
std::span<const std::string_view> all_assemblies();
struct RowKind {
  std::string_view name;   // "thread-size"
  std::string_view title;  // "thread"
};
std::span<const RowKind> all_row_kinds();

}  // namespace sheaf
