// SPDX-License-Identifier: GPL-2.0-or-later
#include <array>

#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

// Each of these takes at least as much as the one before it.
constexpr std::array<std::string_view, 3> from_least = {"after-drain", "with-filter", "dry-fill"};

void examine(const LinkedEntry& fluid, const Shelf&, Report& report) {
  std::string_view before;
  double before_ml = 0;
  for (const std::string_view key : from_least) {
    const sheaf::Statement* statement = fluid.figure(key);
    const auto ml = middle_in(statement, "mL");
    if (!ml) continue;
    if (!before.empty() && *ml < before_ml && fluid.figure(before)->per == statement->per) {
      report(fluid, fluid.place(key),
             std::string(key) + " " + fluid.values(key).front().text + " is less than " +
                 std::string(before) + " " + fluid.values(before).front().text + "; are the two swapped?",
             {other_place(fluid.place(before), std::string(before) + " stands here")});
    }
    before = key;
    before_ml = *ml;
  }
}

}  // namespace

const Rule fills_out_of_order = {
    {.name = "fills-out-of-order",
     .severity = Severity::error,
     .summary = "a dry filling that is less than one after draining",
     .why =
         "Oil that clings to the parts is not drained: a dry assembly takes the most, a change with a filter less, a "
         "change without one the least.",
     .wrong = R"(assembly: exhaust
fluids:
  pump-oil: { name: pump oil, purpose: engine-oil, after-drain: 1.9 L, with-filter: 1.7 L, label-only: yes, cautions: [hot-oil] }
)",
     .right = R"(assembly: exhaust
fluids:
  pump-oil: { name: pump oil, purpose: engine-oil, after-drain: 1.7 L, with-filter: 1.9 L, label-only: yes, cautions: [hot-oil] }
)"},
    {.kind = "fluid", .entry = examine}};

}  // namespace sheafc
