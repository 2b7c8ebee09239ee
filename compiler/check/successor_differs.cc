// SPDX-License-Identifier: GPL-2.0-or-later
#include <unordered_map>
#include <vector>

#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

constexpr std::string_view form_and_fit[] = {"size", "thread", "designation", "length", "inside", "outside", "class"};

std::string_view interchangeable_successor(const LinkedEntry& entry) {
  const Fields* successor = entry.record("superseded-by");
  return successor && successor->flag("interchangeable") ? successor->text("number") : std::string_view{};
}

void compare(const LinkedEntry& old, const LinkedEntry& successor, Report& report) {
  for (const std::string_view key : form_and_fit) {
    if (!old.has(key) || !successor.has(key) || old.text(key) == successor.text(key)) continue;
    report(old, old.place("superseded-by"),
           "called interchangeable, but " + std::string(key) + " differs: " + std::string(old.text(key)) + " and " +
               std::string(successor.text(key)),
           {other_place(successor.place(key), "the successor's " + std::string(key))});
  }
}

void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  std::unordered_map<std::string, std::vector<const LinkedEntry*>> awaited;  // by the number that follows
  const auto each = [&](const auto& visit) {
    for (const LinkedSheet& sheet : sheets.own()) {
      for (const LinkedEntry& entry : sheet.entries) visit(entry);
    }
  };
  each([&](const LinkedEntry& entry) {
    if (const auto number = interchangeable_successor(entry); !number.empty()) awaited[sheaf::squeeze(number)].push_back(&entry);
  });
  if (awaited.empty()) return;
  each([&](const LinkedEntry& entry) {
    const auto found = awaited.find(sheaf::squeeze(entry.text("part-number")));
    if (found == awaited.end()) return;
    for (const LinkedEntry* old : found->second) compare(*old, entry, report);
    awaited.erase(found);  // the same number elsewhere is two-answers' matter
  });
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
