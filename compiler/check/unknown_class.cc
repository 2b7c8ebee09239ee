// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "compiler/check/rules.h"
#include "compiler/sheet/suggestion.h"

namespace sheafc {
namespace {

void examine(const LinkedEntry& fastener, const Shelf& shelf, Report& report) {
  const std::string_view written = fastener.text("class");
  if (written.empty() || shelf.classes().empty()) return;
  const std::string name = sheaf::class_name(written);
  const auto is_named = [&](const sheaf::PropertyClass& row) { return row.name == name; };
  if (std::ranges::any_of(shelf.classes(), is_named)) return;
  std::vector<std::string_view> names;
  for (const sheaf::PropertyClass& row : shelf.classes()) {
    if (std::ranges::find(names, row.name) == names.end()) names.push_back(row.name);
  }
  report(fastener, fastener.place("class"),
         "there is no property class '" + std::string(written) + "'; the shelf has " + any_of(names));
}

}  // namespace

const Rule unknown_class = {
    {.name = "unknown-class",
     .severity = Severity::error,
     .summary = "a property class that no standard has",
     .why =
         "The classes are a closed list: ISO 898-1 for steel, ISO 3506-1 for stainless, SAE J429 for inch grades. "
         "Every judgement of strength follows from the class, so a misread one must not pass.",
     .wrong = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, class: "10.8", torque: 22 N·m, state: dry }
)",
     .right = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, class: "8.8", torque: 22 N·m, state: dry }
)"},
    {.kind = "fastener", .entry = examine}};

}  // namespace sheafc
