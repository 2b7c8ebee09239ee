// SPDX-License-Identifier: GPL-2.0-or-later
// The fields of a record by their keys.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/library/record.h"
#include "query/quantity/figure.h"

namespace sheaf {

using FieldRecords = std::vector<FieldRecord>;

// The first value of the field; null if it is not stated.
const std::string* text_of(const FieldRecords& fields, std::string_view key);
// The same, or an empty text.
std::string text_or_none(const FieldRecords& fields, std::string_view key);
std::vector<std::string> texts_of(const FieldRecords& fields, std::string_view key);
bool says(const FieldRecords& fields, std::string_view key, std::string_view text);

// The quantity that the field states; none if it states none. What a library holds was parsed by the
// compiler, so a text that does not parse here is a library that was tampered with.
std::optional<Statement> statement_of(const FieldRecords& fields, std::string_view key,
                                      std::optional<Dimension> dimension);

// "top-plug" of "sorvane-41-rod/top-plug", and the sheet before it.
std::string entry_part(std::string_view address);
std::string sheet_part(std::string_view address);

}  // namespace sheaf
