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

const LinkedEntry* LinkedSheets::entry_at(std::string_view address) const {
  const auto found = by_address_.find(address);
  return found == by_address_.end() ? nullptr : found->second;
}

std::vector<const LinkedEntry*> LinkedSheets::variants_at(std::string_view address) const {
  std::vector<const LinkedEntry*> variants;
  const LinkedEntry* first = entry_at(address);
  if (!first) return variants;
  const LinkedEntry* end = first->sheet->entries.data() + first->sheet->entries.size();
  for (const LinkedEntry* entry = first; entry != end && entry->id == first->id; ++entry)
    variants.push_back(entry);
  return variants;
}

const std::vector<const LinkedEntry*>& LinkedSheets::rows(std::string_view row_kind) const {
  static const std::vector<const LinkedEntry*> none;
  const auto found = rows_.find(row_kind);
  return found == rows_.end() ? none : found->second;
}

std::vector<const LinkedEntry*> LinkedSheets::entries_of(std::string_view kind) const {
  std::vector<const LinkedEntry*> entries;
  for (const LinkedSheet& sheet : own_) {
    for (const LinkedEntry& entry : sheet.entries) {
      if (entry.kind == kind) entries.push_back(&entry);
    }
  }
  return entries;
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
