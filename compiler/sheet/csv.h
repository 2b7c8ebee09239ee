// SPDX-License-Identifier: GPL-2.0-or-later
// A CSV file (RFC 4180) of which every cell knows its line and column. Cells are parted by the comma, the
// semicolon or the tab, whichever the first line has most of.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "compiler/source/diagnostics.h"
#include "query/quantity/result.h"

namespace sheafc {

struct CsvCell {
  std::string text;  // without its quotes, and without spaces around it
  Span where;
};

struct CsvTable {
  std::vector<CsvCell> header;
  std::vector<std::vector<CsvCell>> rows;  // blank lines are passed over
};

// `name` is the file's, for the places; it must outlive the table. Fails on a quote that is not closed.
sheaf::Result<CsvTable> parse_csv(std::string_view name, std::string_view bytes);

}  // namespace sheafc
