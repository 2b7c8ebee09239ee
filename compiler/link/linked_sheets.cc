// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/link/linked_sheets.h"

namespace sheafc {

LinkedSheets::LinkedSheets() = default;
LinkedSheets::~LinkedSheets() = default;
LinkedSheets::LinkedSheets(LinkedSheets&&) noexcept = default;
LinkedSheets& LinkedSheets::operator=(LinkedSheets&&) noexcept = default;

const Allowances* LinkedEntry::allowances() const {
  const Value* allow = value("allow");
  return allow ? allow->as<Allowances>() : nullptr;
}

const LinkedSheet* LinkedSheets::sheet_named(std::string_view name) const {
  const auto found = by_name_.find(name);
  return found == by_name_.end() ? nullptr : found->second;
}

const std::vector<const LinkedEntry*>& LinkedSheets::rows(std::string_view row_kind) const {
  static const std::vector<const LinkedEntry*> none;
  const auto found = rows_.find(row_kind);
  return found == rows_.end() ? none : found->second;
}

const Caution* LinkedSheets::caution_named(std::string_view name) const {
  const auto found = cautions_.find(name);
  return found == cautions_.end() ? nullptr : found->second;
}

std::string_view LinkedSheets::path_of(std::string_view shown_name) const {
  const auto found = paths_.find(shown_name);
  return found == paths_.end() ? shown_name : found->second;
}

}  // namespace sheafc
