// SPDX-License-Identifier: GPL-2.0-or-later
#include <unordered_map>

#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

// Letters and digits alone, sides kept: "fork cap", "fork-cap" and "Fork cap" are one.
Likeness question_of(const LinkedEntry& entry) {
  Likeness question = likeness({entry.kind, entry.text("load")}) + squeezed_likeness(entry.name);
  for (const Value& side : entry.values("side")) question = likeness(question, side.text);
  return question;
}

void examine(const LinkedSheet& sheet, const Shelf&, Report& report) {
  std::unordered_map<Likeness, const LinkedEntry*> by_name;
  by_name.reserve(sheet.entries.size());
  for (const LinkedEntry& entry : sheet.entries) {
    if (!entry.declaration || entry.kind == "step") continue;
    const auto [found, fresh] = by_name.emplace(question_of(entry), &entry);
    if (fresh || found->second->id == entry.id || sheaf::squeeze(found->second->name) != sheaf::squeeze(entry.name)) continue;
    report(entry, entry.has("name") ? entry.place("name") : entry.where,
           "'" + found->second->id + "' has the same name and no side tells the two apart",
           {other_place(found->second->place("name"), "the other stands here")});
  }
}

}  // namespace

const Rule names_nearly_equal = {
    {.name = "names-nearly-equal",
     .severity = Severity::warning,
     .summary = "two entries of a sheet whose names cannot be told apart",
     .why = "Whoever asks by name is shown both and must guess. Give one another name, or a side.",
     .wrong = R"(parts:
  washer: { name: crush washer }
  washer-two: { name: Crush-washer }
)",
     .right = R"(parts:
  washer: { name: crush washer, side: upper }
  washer-two: { name: crush washer, side: lower }
)"},
    {.sheet = examine}};

}  // namespace sheafc
