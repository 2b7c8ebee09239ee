// SPDX-License-Identifier: GPL-2.0-or-later
// The compiler demands the caution; it never writes what the writer did not.
#include <algorithm>
#include <array>
#include <vector>

#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

// Which dangers an entry must speak of: each names a topic of the glossary (`about`).
struct Danger {
  std::string_view assembly;  // empty: any
  std::vector<std::string_view> kinds;
  std::string_view use;                 // the joint of a fastener, the purpose of a fluid; empty: any
  std::vector<std::string_view> words;  // one of them in the name; none: any
  std::string_view topic;
};

const std::vector<Danger>& dangers() {
  static const std::vector<Danger> all = {
      {"front-brake", {"fastener", "fluid", "limit"}, "", {}, "brake"},
      {"rear-brake", {"fastener", "fluid", "limit"}, "", {}, "brake"},
      {"", {"fluid"}, "brake-fluid", {}, "brake"},
      {"steering-head", {"fastener"}, "", {}, "steering"},
      {"front-wheel", {"fastener"}, "", {}, "wheel"},
      {"rear-wheel", {"fastener"}, "", {}, "wheel"},
      {"fork", {"fastener"}, "cap", {}, "spring"},
      {"shock", {"spring"}, "", {}, "spring"},
      {"fork", {"spring"}, "", {}, "spring"},
      {"", {"pressure"}, "", {"gas", "nitrogen", "tyre"}, "pressure"},
      {"cooling", {"fastener", "fluid", "pressure"}, "", {}, "heat"},
      {"exhaust", {"fastener"}, "", {}, "heat"},
      {"", {"fluid"}, "engine-oil", {}, "heat"},
      {"fuel-system", {"fastener", "fluid"}, "", {}, "fuel"},
  };
  return all;
}

bool threatens(const Danger& danger, std::string_view assembly, const LinkedEntry& entry) {
  if (!danger.assembly.empty() && danger.assembly != assembly) return false;
  if (std::ranges::find(danger.kinds, entry.kind) == danger.kinds.end()) return false;
  if (!danger.use.empty() && danger.use != entry.choice(entry.kind == "fastener" ? "joint" : "purpose"))
    return false;
  if (danger.words.empty()) return true;
  const std::vector<std::string> named = sheaf::words_of(sheaf::fold(entry.name));
  return std::ranges::any_of(
      danger.words, [&](std::string_view word) { return std::ranges::find(named, word) != named.end(); });
}

bool speaks_of(const LinkedEntry& entry, std::string_view topic) {
  return std::ranges::any_of(entry.cautions, [&](const Caution* caution) {
    return std::ranges::any_of(caution->fields.values("about"),
                               [&](const Value& about) { return about.text == topic; });
  });
}

void examine(const LinkedEntry& entry, const Shelf&, Report& report) {
  if (!entry.declaration || !entry.sheet) return;
  const std::string_view assembly = entry.sheet->assembly();
  for (const Danger& danger : dangers()) {
    if (!threatens(danger, assembly, entry) || speaks_of(entry, danger.topic)) continue;
    report(entry, entry.where,
           "this entry needs a caution about " + std::string(danger.topic) +
               "; name one in its `cautions`, or in the sheet's");
    return;
  }
}

}  // namespace

const Rule caution_missing = {
    {.name = "caution-missing",
     .severity = Severity::error,
     .summary = "a figure on a brake, steering, wheel, spring, pressure, heat or fuel without its caution",
     .why =
         "Where a mistake can hurt someone, the usual caution stands beside the figure. Which one is the writer's choice: "
         "any caution of the glossary that is about that danger. A sheet's own `cautions` hold for all its entries.",
     .wrong = R"(assembly: front-brake
checked: { on: 2026-10-02, by: workshop, second: N. }
fasteners:
  mount-bolt: { name: caliper mount bolt, thread: M8x1.25, class: "8.8", torque: 25 N·m, state: dry }
)",
     .right = R"(assembly: front-brake
checked: { on: 2026-10-02, by: workshop, second: N. }
fasteners:
  mount-bolt: { name: caliper mount bolt, thread: M8x1.25, class: "8.8", torque: 25 N·m, state: dry, cautions: [brake-work] }
)"},
    {.entry = examine}};

}  // namespace sheafc
