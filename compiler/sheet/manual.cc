// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/sheet/manual.h"

#include <algorithm>
#include <optional>

#include "compiler/sheet/forms.h"
#include "compiler/sheet/suggestion.h"

namespace sheafc {
namespace {

using sheaf::FieldDeclaration;
using sheaf::ValueType;

// What may stand there, in words.
std::string value_of(const FieldDeclaration& declaration) {
  switch (declaration.type) {
    case ValueType::text:
      return declaration.dimension ? "a unit of " + std::string(sheaf::name_of(*declaration.dimension))
                                   : "words";
    case ValueType::choice:
      return any_of(declaration.choices);
    case ValueType::flag:
      return "yes or no";
    case ValueType::integer:
      return "a whole number";
    case ValueType::date:
      return "a date";
    case ValueType::years:
      return "years";
    case ValueType::frames:
      return "frame numbers";
    case ValueType::count:
      return "a count";
    case ValueType::figure:
      return declaration.dimension ? "a figure of " + std::string(sheaf::name_of(*declaration.dimension))
                                   : "a figure";
    case ValueType::torque:
      return "a torque, in stages if need be";
    case ValueType::interval:
      return "a distance or a time";
    case ValueType::thread:
      return "a thread";
    case ValueType::drive:
      return "a drive";
    case ValueType::size:
      return "a size";
    case ValueType::bearing:
      return "a designation";
    case ValueType::reference:
      return "an address";
    case ValueType::pattern:
      return "numbers in order";
    case ValueType::record: {
      std::vector<std::string_view> keys;
      for (const FieldDeclaration& field : declaration.fields) keys.push_back(field.key);
      return "a mapping of " + any_of(keys);
    }
    case ValueType::allowances:
      return "rules, each with its reason";
    case ValueType::variants:
      return "a list of years, frames or market with the fields that differ";
  }
  return {};
}

std::string cell(std::string_view text) {
  std::string safe;
  for (const char c : text) safe += c == '|' ? std::string("\\|") : std::string(1, c);
  return safe;
}

std::string row_of(const FieldDeclaration& declaration) {
  std::string value = value_of(declaration);
  if (declaration.many) value += ", or a list";
  std::string row = "| `" + std::string(declaration.key) + "`" + (declaration.required ? " (needed)" : "") +
                    " | " + cell(declaration.help) + " | " + cell(value) + " | ";
  if (!declaration.example.empty()) row += "`" + cell(declaration.example) + "` ";
  return row + "|\n";
}

std::string table_of(const Scope& scope) {
  std::string table = "| key | what it says | its value | example |\n|---|---|---|---|\n";
  for (const FieldDeclaration* declaration : scope) table += row_of(*declaration);
  return table;
}

Scope pointers(std::span<const FieldDeclaration> fields) {
  Scope scope;
  for (const FieldDeclaration& field : fields) scope.push_back(&field);
  return scope;
}

// Sections have manual tables of their own; of the other blocks only the form's table can tell.
std::string form_table(const FormDeclaration& form) {
  std::string table = table_of(form.fields);
  for (const BlockDeclaration& block : form.blocks) {
    if (!block.kind)
      table += "| `" + std::string(block.key) + "`" + (block.required ? " (needed)" : "") + " | " +
               cell(block.help) + " | a block | |\n";
  }
  return table;
}

std::optional<std::string> table_named(std::string_view name) {
  for (const FormDeclaration& form : all_forms()) {
    if (form.name == name) return form_table(form);
  }
  if (const sheaf::KindDeclaration* kind = sheaf::kind_named(name)) return table_of(pointers(kind->fields));
  if (name == "common") return table_of(pointers(sheaf::common_fields()));
  if (name == "fits") return table_of(pointers(sheaf::fit_fields()));
  if (name == "source") return table_of(pointers(sheaf::source_fields()));
  if (name == "checked") return table_of(pointers(sheaf::check_fields()));
  return {};
}

}  // namespace

sheaf::Result<std::string> with_key_tables(std::string_view manual) {
  constexpr std::string_view begin = "<!-- keys: ", close = " -->\n", end = "<!-- end -->";
  std::string filled;
  for (std::size_t at = manual.find(begin); at != std::string_view::npos; at = manual.find(begin)) {
    const std::size_t name_at = at + begin.size();
    const std::size_t name_end = manual.find(close, name_at);
    const std::size_t end_at = manual.find(end, name_at);
    if (name_end == std::string_view::npos || end_at == std::string_view::npos || end_at < name_end) {
      return sheaf::Failure{"a block of keys has no '<!-- end -->'"};
    }
    const std::string_view name = manual.substr(name_at, name_end - name_at);
    const auto table = table_named(name);
    if (!table) return sheaf::Failure{"there is no table of keys named '" + std::string(name) + "'"};
    filled += std::string(manual.substr(0, name_end + close.size())) + *table;
    filled += end;
    manual.remove_prefix(end_at + end.size());
  }
  return filled + std::string(manual);
}

}  // namespace sheafc
