// SPDX-License-Identifier: GPL-2.0-or-later
#include <array>

#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

// What one filling takes, mL (common practice, no source): the least and the most of any two-wheeler or
// small utility machine.
struct Filling {
  std::string_view purpose;
  sheaf::Band ml;
};
constexpr std::array<Filling, 7> fillings = {{{"fork-oil", {80, 1300}},
                                              {"damper-oil", {40, 1300}},
                                              {"engine-oil", {500, 8000}},
                                              {"gear-oil", {30, 3000}},
                                              {"brake-fluid", {10, 500}},
                                              {"clutch-fluid", {10, 500}},
                                              {"coolant", {100, 12000}}}};
constexpr std::array<std::string_view, 4> volumes = {"volume", "dry-fill", "after-drain", "with-filter"};

const Filling* filling_of(std::string_view purpose) {
  for (const Filling& filling : fillings) {
    if (filling.purpose == purpose) return &filling;
  }
  return nullptr;
}

void examine(const LinkedEntry& fluid, const Shelf&, Report& report) {
  const Filling* filling = filling_of(fluid.choice("purpose"));
  if (!filling) return;
  for (const std::string_view key : volumes) {
    const auto ml = middle_in(fluid.figure(key), "mL");
    if (!ml || filling->ml.holds(*ml)) continue;
    report(fluid, fluid.place(key),
           fluid.values(key).front().text + " is outside what one filling of " +
               std::string(filling->purpose) + " takes (" + sheaf::brief(filling->ml.least) + " to " +
               sheaf::brief(filling->ml.most) + " mL); mL and L mixed up?");
  }
}

}  // namespace

const Rule fluid_volume_out_of_range = {
    {.name = "fluid-volume-out-of-range",
     .severity = Severity::error,
     .summary = "a filling no such system takes",
     .why =
         "A fork leg takes about 0.1 to 1.3 L, an engine 0.5 to 8 L, a brake 10 to 500 mL. A volume outside is mL "
         "written as L, or a digit lost. The ranges are common practice, no source.",
     .wrong = R"(fluids:
  fork-oil: { name: fork oil, purpose: fork-oil, volume: 520 L per leg, label-only: yes }
)",
     .right = R"(fluids:
  fork-oil: { name: fork oil, purpose: fork-oil, volume: 520 mL per leg, label-only: yes }
)"},
    {.kind = "fluid", .entry = examine}};

}  // namespace sheafc
