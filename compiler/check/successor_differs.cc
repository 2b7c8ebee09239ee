// SPDX-License-Identifier: GPL-2.0-or-later
#include <map>

#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

constexpr std::string_view form_and_fit[] = {"size", "thread", "designation", "length", "inside", "outside", "class"};

void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  std::map<std::string, const LinkedEntry*> by_number;
  for (const LinkedSheet& sheet : sheets.own()) {
    for (const LinkedEntry& entry : sheet.entries) {
      if (const auto number = entry.text("part-number"); !number.empty()) by_number.emplace(sheaf::squeeze(number), &entry);
    }
  }
  for (const auto& [number, entry] : by_number) {
    const Fields* successor = entry->record("superseded-by");
    if (!successor || !successor->flag("interchangeable")) continue;
    const auto found = by_number.find(sheaf::squeeze(successor->text("number")));
    if (found == by_number.end()) continue;
    for (const std::string_view key : form_and_fit) {
      if (!entry->has(key) || !found->second->has(key) || entry->text(key) == found->second->text(key)) continue;
      report(*entry, entry->place("superseded-by"),
             "called interchangeable, but " + std::string(key) + " differs: " + std::string(entry->text(key)) + " and " +
                 std::string(found->second->text(key)),
             {other_place(found->second->place(key), "the successor's " + std::string(key))});
    }
  }
}

}  // namespace

const Rule successor_differs = {
    {.name = "successor-differs",
     .severity = Severity::error,
     .summary = "a successor called interchangeable that differs in form or fit",
     .why = "The clerk sells the new number for the old. If size, thread or class differ it is another part: say "
            "`interchangeable: no` and what differs.",
     .wrong = R"(seals:
  old: { name: old oil seal, size: 41x54x11, use: fork-oil, part-number: A-1, superseded-by: { number: A-2, interchangeable: yes } }
  new: { name: new oil seal, size: 41x53x11, use: fork-oil, part-number: A-2 }
)",
     .right = R"(seals:
  old: { name: old oil seal, size: 41x54x11, use: fork-oil, part-number: A-1, superseded-by: { number: A-2, interchangeable: no } }
  new: { name: new oil seal, size: 41x53x11, use: fork-oil, part-number: A-2 }
)"},
    {.all = examine}};

}  // namespace sheafc
