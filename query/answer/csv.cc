// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/csv.h"

#include "query/answer/text.h"

namespace sheaf {
namespace {

std::string cell_of(std::string_view text, char separator) {
  const std::string bare = clean(text);
  if (bare.find(separator) == std::string::npos && bare.find('"') == std::string::npos) return bare;
  std::string quoted = "\"";
  for (const char sign : bare) {
    quoted += sign;
    if (sign == '"') quoted += sign;
  }
  return quoted + '"';
}

}  // namespace

std::string csv_row(const std::vector<std::string>& cells, char separator) {
  std::string row;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i > 0) row += separator;
    row += cell_of(cells[i], separator);
  }
  return row + '\n';
}

}  // namespace sheaf
