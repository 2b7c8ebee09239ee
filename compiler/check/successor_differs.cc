// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

constexpr std::string_view form_and_fit[] = {"size",   "thread",  "designation", "length",
                                             "inside", "outside", "class"};

std::string_view interchangeable_successor(const LinkedEntry& entry) {
  const Fields* successor = entry.record("superseded-by");
  return successor && successor->flag("interchangeable") ? successor->text("number") : std::string_view{};
}

void compare(const LinkedEntry& old, const LinkedEntry& successor, Report& report) {
  for (const std::string_view key : form_and_fit) {
    if (!old.has(key) || !successor.has(key) || old.text(key) == successor.text(key)) continue;
    report(old, old.place("superseded-by"),
           "called interchangeable, but " + std::string(key) + " differs: " + std::string(old.text(key)) +
               " and " + std::string(successor.text(key)),
           {other_place(successor.place(key), "the successor's " + std::string(key))});
  }
}

enum Says : std::uint64_t { is_successor, has_successor };

void gather(const LinkedEntry& entry, Facts& facts) {
  if (const auto number = interchangeable_successor(entry); !number.empty())
    facts.add(entry, likeness({sheaf::squeeze(number)}), has_successor);
  if (const auto number = entry.text("part-number"); !number.empty())
    facts.add(entry, likeness({sheaf::squeeze(number)}), is_successor);
}

// The first of that number stands for the successor: that another says otherwise is the matter of
// two-answers.
void judge(FactGroup group, Look& look, Report& report) {
  const auto successor = std::ranges::find(group, std::uint64_t{is_successor}, &Fact::says);
  if (successor == group.end()) return;
  for (const Fact& fact : group) {
    if (fact.says == has_successor) compare(look.entry(fact), look.entry(*successor), report);
  }
}

}  // namespace

const Rule successor_differs = {
    {.name = "successor-differs",
     .severity = Severity::error,
     .summary = "a successor called interchangeable that differs in form or fit",
     .why =
         "The clerk sells the new number for the old. If size, thread or class differ it is another part: say "
         "`interchangeable: no` and what differs.",
     .wrong = R"(seals:
  old: { name: old oil seal, size: 41x54x11, use: fork-oil, part-number: A-1, superseded-by: { number: A-2, interchangeable: yes } }
  new: { name: new oil seal, size: 41x53x11, use: fork-oil, part-number: A-2 }
)",
     .right = R"(seals:
  old: { name: old oil seal, size: 41x54x11, use: fork-oil, part-number: A-1, superseded-by: { number: A-2, interchangeable: no } }
  new: { name: new oil seal, size: 41x53x11, use: fork-oil, part-number: A-2 }
)"},
    {.gather = gather, .judge = judge}};

}  // namespace sheafc
