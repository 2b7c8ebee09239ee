// SPDX-License-Identifier: GPL-2.0-or-later
// One scalar's text, read as the type its field declares. One function a type; no files, no nodes, so
// that a value from a library or a CSV is read by the same rules.
#pragma once

#include <string>
#include <string_view>

#include "compiler/sheet/value.h"

namespace sheafc {

struct Column;

struct Scalar {
  std::string text;      // canonical
  Meaning meaning = {};  // none of text and choices
};

// The rule that a text breaks when it cannot be read as that type: "unreadable-thread".
std::string_view rule_of(sheaf::ValueType type);

// Not for records, allowances and variants, which are no scalars. The Failure marks bytes of `text`.
sheaf::Result<Scalar> read_scalar(const sheaf::FieldDeclaration& declaration, std::string_view text);

// A table's cell: "36.6" or "25..31" in the column's unit.
sheaf::Result<Scalar> read_cell(const Column& column, std::string_view text);

// "9,5": where a decimal comma stands, or npos.
std::size_t decimal_comma(std::string_view text);

}  // namespace sheafc
