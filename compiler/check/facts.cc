// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/facts.h"

#include <algorithm>

namespace sheafc {
namespace {

// Rules never share a group.
Likeness of_rule(std::uint8_t rule, Likeness alike) { return alike * 64 + alike / 64 + rule; }

}  // namespace

Fact& Facts::add(Likeness alike, std::uint64_t says) {
  Fact& fact = out_.facts.emplace_back();
  fact.alike = of_rule(rule_, alike);
  fact.says = says;
  fact.sheet = sheet_;
  fact.rule = rule_;
  return fact;
}

Fact& Facts::add(const LinkedEntry& entry, Likeness alike, std::uint64_t says) {
  Fact& fact = add(alike, says);
  const LinkedEntry* first = entry.sheet->entries.data();
  const LinkedEntry* at = &entry;
  if (!entry.variant.empty()) {
    while (at != first && (at - 1)->id == entry.id) --at;
  }
  fact.entry = static_cast<std::uint32_t>(&entry - first);
  fact.variant = static_cast<std::uint16_t>(&entry - at) & 0x7fff;
  fact.inherited = entry.inherited ? 1 : 0;
  return fact;
}

void set_years(Fact& fact, const Years& years) {
  if (years.from) fact.from = static_cast<std::int16_t>(years.from);
  if (years.to) fact.to = static_cast<std::int16_t>(years.to);
}

}  // namespace sheafc
