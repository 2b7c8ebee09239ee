// SPDX-License-Identifier: GPL-2.0-or-later
// A library's records as they are kept, for other programs: nothing converted, nothing left out. JSON.md has
// the members of the lines.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "query/library/library.h"

namespace sheaf {

// One JSON object each, without a newline; "record" says what it is: library, sheet, entry, machine, word.
std::string dump_line(const LibraryFacts& facts);
std::string dump_line(const SheetRecord& sheet);  // without its entries
std::string dump_line(EntryId id, const EntryRecord& entry);
std::string dump_line(const Machine& machine);
std::string dump_line(const WordRecord& word);

// The tables that a library makes as comma-separated values: "entries" has a row for each entry, "fields" one
// for each value of a field, and so on. An open end of years is an empty cell.
struct DumpTable {
  std::string_view name;
  std::string_view holds;  // "a value of a field of an entry"
  std::vector<std::string> columns;
};
std::span<const DumpTable> dump_tables();

// The rows of such a table that come of a record; none where the table has none of it.
using Rows = std::vector<std::vector<std::string>>;
Rows dump_rows(std::string_view table, const SheetRecord& sheet);
Rows dump_rows(std::string_view table, EntryId id, const EntryRecord& entry);
Rows dump_rows(std::string_view table, const Machine& machine);
Rows dump_rows(std::string_view table, const WordRecord& word);

}  // namespace sheaf
