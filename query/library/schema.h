// SPDX-License-Identifier: GPL-2.0-or-later
// The tables and views of a library's SQLite part. FORMAT.md explains them; the views are for everybody
// and stay as they are within a format, the tables are ours.
#pragma once

#include <span>
#include <string_view>

namespace sheaf {

struct SchemaItem {
  std::string_view name;
  std::string_view sql;  // exactly as SQLite keeps it: no semicolon, no space at either end
};

std::span<const SchemaItem> schema_tables();
std::span<const SchemaItem> schema_indexes();  // made after the rows, which is faster
std::span<const SchemaItem> schema_views();

}  // namespace sheaf
