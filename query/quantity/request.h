// SPDX-License-Identifier: GPL-2.0-or-later
// One line typed at `sheaf convert`, understood and answered. How the answer is set is not decided here.
//
//   "35 N·m to lbf·ft"  "35±3 Nm ftlb"  "5/16 in mm"  "52 cSt@40C sus"  "22 nm in ft lbs"
//   "17.5 oz in mL"     two readings, side by side: US and imperial fluid ounces
//   "35 N·m"            every useful unit of its dimension
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/quantity/convert.h"

namespace sheaf {

struct DerivedFigure {
  Statement statement;             // in the unit asked for
  bool exact = false;              // no digit was rounded
  std::optional<Setting> setting;  // where the step of a scale was given
  std::string basis;               // "by ASTM D2161 at 100 °F; no temperature was given"; else empty
};

// One way to read what was typed. The source is primary, the rest derived from it.
struct Reading {
  Statement source;
  std::vector<DerivedFigure> derived;
};

struct ConversionRequest {
  std::string_view text;                    // at most 1000 bytes
  std::optional<Number> step;               // of the tool's scale, in the unit asked for
  std::optional<Dimension> dimension = {};  // where the place it was typed at decides it
};

// At least one reading with at least one derived figure; several readings where a unit is ambiguous. Fails
// for what is not understood, and for nonsense ("35 N·m to mL") by naming what each unit measures.
Result<std::vector<Reading>> answer_request(const ConversionRequest& request);

// A table of a range, for printing on a wall: "10..60 N·m lbf·ft" every 5 N·m. All rows have the same
// decimal places. Rows run from the least of the range upward and never past the most.
struct TableRow {
  Quantity source, derived;
};
struct ConversionTable {
  const Unit* from = nullptr;
  const Unit* to = nullptr;
  std::vector<TableRow> rows;
};
inline constexpr std::size_t most_table_rows = 10000;
Result<ConversionTable> tabulate(const Figure& range, const Unit& to, const Number& every);
// The same from one line, as typed at `sheaf convert … --every 5`.
Result<ConversionTable> answer_table(std::string_view text, const Number& every);

}  // namespace sheaf
