// SPDX-License-Identifier: GPL-2.0-or-later
// The blocks of a sheet that hold entries, rows, words and cautions. Each adds what it read to the
// reader's sheet.
#pragma once

#include "compiler/sheet/read_fields.h"

namespace sheafc {

// "fasteners: { top-plug: {...} }"
void read_section(FieldReader& reader, const Node& section, const sheaf::KindDeclaration& kind);
// The ids of all sections share one sheet: each stands once.
void check_entry_ids(FieldReader& reader);

// The blocks of a table, once its own fields are read. Null where absent.
void read_table(FieldReader& reader, const Node* columns, const Node* rows);

void read_words(FieldReader& reader, const Node& words);
void read_glossary(FieldReader& reader, const Node& cautions);

}  // namespace sheafc
