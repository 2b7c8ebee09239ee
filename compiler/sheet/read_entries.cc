// SPDX-License-Identifier: GPL-2.0-or-later
// Sections of entries: fasteners, fluids, and so on.
#include <unordered_map>

#include "compiler/sheet/read_sections.h"
#include "compiler/sheet/sheet_rules.h"

namespace sheafc {

void read_section(FieldReader& reader, const Node& section, const sheaf::KindDeclaration& kind) {
  const std::string owner = with_article(kind.name);
  if (!reader.expect_mapping(section, "'" + std::string(kind.section) + "'")) return;
  for (const Pair& pair : section.pairs) {
    reader.expect_name(pair.key, pair.key_span);
    Entry entry{std::string(pair.key), kind.name, &kind, pair.key_span, {}};
    if (!reader.expect_mapping(*pair.value, owner)) {
      reader.sheet().unread.push_back(entry.id);
      continue;
    }
    entry.fields = reader.read(*pair.value, entry_scope(kind), owner, &kind);
    reader.sheet().entries.push_back(std::move(entry));
  }
}

void check_entry_ids(FieldReader& reader) {
  std::unordered_map<std::string_view, const Entry*> seen;
  for (const Entry& entry : reader.sheet().entries) {
    const auto [first, is_new] = seen.emplace(entry.id, &entry);
    if (is_new) continue;
    reader.sink().report({Severity::error,
                          rule::duplicate_entry,
                          entry.place,
                          "'" + entry.id + "' names two entries of this sheet; an address must name one",
                          {{Severity::note, rule::duplicate_entry, first->second->place, "the other one"}}});
  }
}

}  // namespace sheafc
