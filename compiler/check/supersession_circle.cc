// SPDX-License-Identifier: GPL-2.0-or-later
#include <map>
#include <set>

#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

struct Step {
  std::string next;
  const LinkedEntry* entry;
  Span where;
};
using Chain = std::map<std::string, Step>;

std::string_view successor_of(const LinkedEntry& entry) {
  const Fields* successor = entry.record("superseded-by");
  return successor ? successor->text("number") : std::string_view{};
}

Chain chain_of(const LinkedSheets& sheets) {
  Chain chain;
  for (const LinkedSheet& sheet : sheets.own()) {
    for (const LinkedEntry& entry : sheet.entries) {
      if (!entry.has("superseded-by") && !entry.has("supersedes")) continue;
      const std::string number = sheaf::squeeze(entry.text("part-number"));
      if (number.empty()) continue;
      const std::string next = sheaf::squeeze(successor_of(entry));
      if (!next.empty()) chain.emplace(number, Step{next, &entry, entry.place("superseded-by")});
      for (const Value& old : entry.values("supersedes")) {
        chain.emplace(sheaf::squeeze(old.text), Step{number, &entry, old.where});
      }
    }
  }
  return chain;
}

void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  const Chain chain = chain_of(sheets);
  std::set<std::string> told;
  for (const auto& [start, first] : chain) {
    std::set<std::string> seen{start};
    const Step* step = &first;
    while (seen.insert(step->next).second) {
      const auto next = chain.find(step->next);
      if (next == chain.end()) { step = nullptr; break; }
      step = &next->second;
    }
    if (!step || step->next != start || !told.insert(*seen.begin()).second) continue;
    report(*first.entry, first.where, "the part numbers go in a circle: each replaces the other",
           {other_place(step->where, "the circle closes here")});
  }
}

}  // namespace

const Rule supersession_circle = {
    {.name = "supersession-circle",
     .severity = Severity::error,
     .summary = "part numbers that replace each other in a circle",
     .why = "Old numbers lead to new ones and end somewhere. A circle means that one of the two was entered the wrong way "
            "round, and whoever orders is sent from one to the other.",
     .wrong = R"(parts:
  washer: { name: sealing washer, part-number: A-1, superseded-by: { number: A-2, interchangeable: yes } }
  new-washer: { name: new sealing washer, part-number: A-2, superseded-by: { number: A-1, interchangeable: yes } }
)",
     .right = R"(parts:
  washer: { name: sealing washer, part-number: A-1, superseded-by: { number: A-2, interchangeable: yes } }
  new-washer: { name: new sealing washer, part-number: A-2 }
)"},
    {.all = examine}};

}  // namespace sheafc
