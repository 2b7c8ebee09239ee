// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <utility>
#include <vector>

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
  std::vector<std::pair<Likeness, const LinkedEntry*>> asked;  // alike side by side, and in the sheet's order
  asked.reserve(sheet.entries.size());
  for (const LinkedEntry& entry : sheet.entries) {
    if (entry.declaration && entry.kind != "step") asked.emplace_back(question_of(entry), &entry);
  }
  std::ranges::sort(asked);
  const LinkedEntry* first = nullptr;
  for (std::size_t i = 0; i < asked.size(); ++i) {
    const LinkedEntry& entry = *asked[i].second;
    if (i == 0 || asked[i].first != asked[i - 1].first) first = &entry;
    if (first->id == entry.id || sheaf::squeeze(first->name) != sheaf::squeeze(entry.name)) continue;
    report(entry, entry.has("name") ? entry.place("name") : entry.where,
           "'" + first->id + "' has the same name and no side tells the two apart",
           {other_place(first->place("name"), "the other stands here")});
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
