// SPDX-License-Identifier: GPL-2.0-or-later
// The blocks of a sheet that hold entries, rows, words and cautions. Each adds what it read to the
// reader's sheet.
#pragma once

#include <optional>

#include "compiler/sheet/read_fields.h"

namespace sheafc {

// "fasteners: { top-plug: {...} }"
void read_section(FieldReader& reader, const Node& section, const sheaf::KindDeclaration& kind);
// The ids of all sections share one sheet: each stands once.
void check_entry_ids(FieldReader& reader);

// The blocks of a table, once its own fields are read. Null where absent.
void read_table(FieldReader& reader, const Node* columns, const Node* rows);

// A column of that name and type, "mm" or "thread", whose declaration the sheet keeps; none if there is no
// such type. `name` must live as long as the sheet.
std::optional<Column> column_of(std::string_view name, std::string_view type, Sheet& sheet);

void read_words(FieldReader& reader, const Node& words);
void read_glossary(FieldReader& reader, const Node& cautions);

}  // namespace sheafc
