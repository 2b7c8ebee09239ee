// SPDX-License-Identifier: GPL-2.0-or-later
// The beginnings of a sheet: what is known filled in, what is needed left open, the rest shown as remarks.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/sheet/csv.h"
#include "compiler/sheet/scalar_types.h"
#include "compiler/source/diagnostics.h"

namespace sheafc {

struct SheetStart {
  std::string form;  // assembly, table, words, crib
  std::string what;  // "fork", "thread-size"; of words and cribs empty
  std::string name;  // "my-fork"
  std::string title, maker, make, model, years, source, by;  // what is not known stays empty
  std::string day;                                           // of checking
  std::string body;  // entries or rows, from a CSV; else examples are shown as remarks
};

std::string start_of_sheet(const SheetStart& start);

// Entries of a kind, or rows of a kind of table, from a CSV whose header names the keys. "torque (N·m)" gives
// numbers without a unit that unit; a table's column takes it as its type. Without a column `id`, an entry is
// named after its `name`. Each cell is read as its field would be, and what is wrong is reported at the cell.
std::string entries_from_csv(const CsvTable& csv, std::string_view kind, Diagnostics& sink);
std::string rows_from_csv(const CsvTable& csv, Diagnostics& sink);

}  // namespace sheafc
