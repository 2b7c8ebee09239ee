// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

void examine(const LinkedEntry& fluid, const Shelf&, Report& report) {
  if (fluid.has("viscosity") || fluid.flag("label-only")) return;
  const std::string_view purpose = fluid.choice("purpose");
  if (purpose != "fork-oil" && purpose != "damper-oil") return;
  report(
      fluid, fluid.has("grade") ? fluid.place("grade") : fluid.where,
      "a damping oil needs its viscosity (viscosity: 32 mm²/s at 40 °C), or label-only: yes if the source gives only a label");
}

}  // namespace

const Rule viscosity_missing = {
    {.name = "viscosity-missing",
     .severity = Severity::warning,
     .summary = "a damping oil that is named by its label alone",
     .why =
         "The W on a bottle of damping oil is no scale: oils with one label differ threefold. Only the viscosity in mm²/s "
         "at 40 °C can be compared. Where the source gives nothing else, `label-only: yes` says so, and the answer does.",
     .wrong = R"(fluids:
  fork-oil: { name: fork oil, purpose: fork-oil, grade: 10W, volume: 512 mL per leg }
)",
     .right = R"(fluids:
  fork-oil: { name: fork oil, purpose: fork-oil, grade: 10W, volume: 512 mL per leg, viscosity: 32 mm²/s at 40 °C }
)"},
    {.kind = "fluid", .entry = examine}};

}  // namespace sheafc
