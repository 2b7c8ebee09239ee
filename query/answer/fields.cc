// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/fields.h"

#include <algorithm>

namespace sheaf {

const std::string* text_of(const FieldRecords& fields, std::string_view key) {
  const auto found = std::ranges::find(fields, key, &FieldRecord::key);
  return found == fields.end() ? nullptr : &found->text;
}

std::string text_or_none(const FieldRecords& fields, std::string_view key) {
  const auto* text = text_of(fields, key);
  return text ? *text : std::string();
}

std::vector<std::string> texts_of(const FieldRecords& fields, std::string_view key) {
  std::vector<std::string> texts;
  for (const auto& field : fields)
    if (field.key == key) texts.push_back(field.text);
  return texts;
}

bool says(const FieldRecords& fields, std::string_view key, std::string_view text) {
  return std::ranges::any_of(
      fields, [&](const FieldRecord& field) { return field.key == key && field.text == text; });
}

std::optional<Statement> statement_of(const FieldRecords& fields, std::string_view key,
                                      std::optional<Dimension> dimension) {
  const auto* text = text_of(fields, key);
  if (!text) return std::nullopt;
  auto statement = parse_statement(*text, dimension, Input::sheet);
  if (!statement) return std::nullopt;
  return std::move(statement).value();
}

std::string entry_part(std::string_view address) {
  return std::string(address.substr(address.find('/') + 1));
}

std::string sheet_part(std::string_view address) { return std::string(address.substr(0, address.find('/'))); }

}  // namespace sheaf
