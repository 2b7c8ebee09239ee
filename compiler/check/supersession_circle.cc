// SPDX-License-Identifier: GPL-2.0-or-later
#include <unordered_map>
#include <unordered_set>

#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

// Which number follows which: the hash of the old one, then of the new one, side by side.
struct Step {
  Likeness next;
  const Fact* fact;
};
using Chain = std::unordered_map<Likeness, Step>;

std::string_view successor_of(const LinkedEntry& entry) {
  const Fields* successor = entry.record("superseded-by");
  return successor ? successor->text("number") : std::string_view{};
}

// `part` of a fact: 0 for what the entry is superseded by, else the place of what it supersedes, from 1.
void gather(const LinkedEntry& entry, Facts& facts) {
  if (!entry.has("superseded-by") && !entry.has("supersedes")) return;
  const std::string number = sheaf::squeeze(entry.text("part-number"));
  if (number.empty()) return;
  constexpr Likeness all_in_one_group = 0;
  const auto add = [&](std::string_view old, std::string_view next, std::size_t part) {
    facts.add(entry, all_in_one_group, likeness({old})).part = static_cast<std::uint8_t>(part);
    facts.add(entry, all_in_one_group, likeness({next})).part = static_cast<std::uint8_t>(part);
  };
  const std::string next = sheaf::squeeze(successor_of(entry));
  if (!next.empty()) add(number, next, 0);
  const std::size_t count = std::min<std::size_t>(entry.values("supersedes").size(), 255);
  for (std::size_t i = 0; i < count; ++i)
    add(sheaf::squeeze(entry.values("supersedes")[i].text), number, i + 1);
}

Chain chain_of(FactGroup group) {
  Chain chain;
  for (std::size_t i = 0; i + 1 < group.size(); i += 2)
    chain.emplace(group[i].says, Step{group[i + 1].says, &group[i]});
  return chain;
}

Span place_of(const Fact& fact, Look& look) {
  const LinkedEntry& entry = look.entry(fact);
  return fact.part == 0 ? entry.place("superseded-by") : entry.values("supersedes")[fact.part - 1u].where;
}

void judge(FactGroup group, Look& look, Report& report) {
  const Chain chain = chain_of(group);
  std::unordered_set<Likeness> told;
  for (std::size_t i = 0; i + 1 < group.size(); i += 2) {
    const Likeness start = group[i].says;
    std::unordered_set<Likeness> seen{start};
    const Step* step = &chain.at(start);
    while (step && seen.insert(step->next).second) {
      const auto next = chain.find(step->next);
      step = next == chain.end() ? nullptr : &next->second;
    }
    if (!step || step->next != start || told.contains(start)) continue;
    told.insert(seen.begin(), seen.end());
    report(look.entry(group[i]), place_of(group[i], look),
           "the part numbers go in a circle: each replaces the other",
           {other_place(place_of(*step->fact, look), "the circle closes here")});
  }
}

}  // namespace

const Rule supersession_circle = {
    {.name = "supersession-circle",
     .severity = Severity::error,
     .summary = "part numbers that replace each other in a circle",
     .why =
         "Old numbers lead to new ones and end somewhere. A circle means that one of the two was entered the wrong way "
         "round, and whoever orders is sent from one to the other.",
     .wrong = R"(parts:
  washer: { name: sealing washer, part-number: A-1, superseded-by: { number: A-2, interchangeable: yes } }
  new-washer: { name: new sealing washer, part-number: A-2, superseded-by: { number: A-1, interchangeable: yes } }
)",
     .right = R"(parts:
  washer: { name: sealing washer, part-number: A-1, superseded-by: { number: A-2, interchangeable: yes } }
  new-washer: { name: new sealing washer, part-number: A-2 }
)"},
    {.gather = gather, .judge = judge}};

}  // namespace sheafc
