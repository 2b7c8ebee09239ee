// SPDX-License-Identifier: GPL-2.0-or-later
#include <map>
#include <string>

#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

// What the class names of 49 CFR 571.116 are made of; 5.1 is glycol although 5 is silicone.
std::string_view family_of_grade(std::string_view grade) {
  const std::string squeezed = sheaf::squeeze(grade);
  if (squeezed == "dot5") return "silicone";
  if (squeezed == "dot3" || squeezed == "dot4" || squeezed == "dot5.1") return "glycol";
  return {};
}

std::string_view family_of(const LinkedEntry& fluid) {
  const std::string_view stated = fluid.choice("family");
  return stated.empty() ? family_of_grade(fluid.text("grade")) : stated;
}

bool works_hydraulics(const LinkedEntry& fluid) {
  return fluid.kind == "fluid" &&
         (fluid.choice("purpose") == "brake-fluid" || fluid.choice("purpose") == "clutch-fluid");
}

void examine_grade(const LinkedEntry& fluid, Report& report) {
  const std::string_view by_grade = family_of_grade(fluid.text("grade"));
  const std::string_view stated = fluid.choice("family");
  if (by_grade.empty() || stated.empty() || by_grade == stated) return;
  report(fluid, fluid.place("family"),
         std::string(fluid.text("grade")) + " is made of " + std::string(by_grade) + ", not " +
             std::string(stated),
         {other_place(fluid.place("grade"), "the grade stands here")});
}

// Seals of EPDM swell in mineral oil, seals of NBR in glycol (common practice, no source).
void examine_seals(const LinkedSheet& sheet, const LinkedEntry& fluid, Report& report) {
  const std::string_view family = family_of(fluid);
  for (const LinkedEntry& seal : sheet.entries) {
    const std::string_view rubber = seal.choice("material");
    const bool swells = (family == "mineral" && rubber == "EPDM") ||
                        (family == "glycol" && rubber == "NBR" && seal.choice("use") == "brake-piston");
    if (!swells) continue;
    report(fluid, fluid.has("family") ? fluid.place("family") : fluid.place("grade"),
           std::string(family) + " fluid ruins seals of " + std::string(rubber),
           {other_place(seal.place("material"), "this seal's rubber")});
  }
}

void examine(const LinkedSheet& sheet, const Shelf&, Report& report) {
  const LinkedEntry* first = nullptr;
  for (const LinkedEntry& fluid : sheet.entries) {
    if (!works_hydraulics(fluid)) continue;
    examine_grade(fluid, report);
    examine_seals(sheet, fluid, report);
    if (family_of(fluid).empty()) continue;
    if (first && family_of(*first) != family_of(fluid) &&
        first->choice("purpose") == fluid.choice("purpose") && first->id != fluid.id) {
      report(fluid, fluid.has("family") ? fluid.place("family") : fluid.place("grade"),
             "one circuit cannot take both " + std::string(family_of(*first)) + " and " +
                 std::string(family_of(fluid)) + " fluid",
             {other_place(first->where, "the other fluid stands here")});
    }
    if (!first) first = &fluid;
  }
}

}  // namespace

const Rule fluid_families_clash = {
    {.name = "fluid-families-clash",
     .severity = Severity::error,
     .summary = "a hydraulic fluid that its grade, its circuit or its seals exclude",
     .why =
         "DOT 5 is silicone; DOT 3, 4 and 5.1 are glycol (49 CFR 571.116); mineral fluid is neither. They do not mix, and "
         "each ruins the other's rubber: mineral oil swells EPDM, glycol ruins NBR (common practice, no source).",
     .wrong = R"(assembly: front-brake
checked: { on: 2026-10-02, by: workshop, second: N. }
fluids:
  brake-fluid: { name: brake fluid, purpose: brake-fluid, grade: DOT 5, family: glycol, cautions: [brake-fluid] }
)",
     .right = R"(assembly: front-brake
checked: { on: 2026-10-02, by: workshop, second: N. }
fluids:
  brake-fluid: { name: brake fluid, purpose: brake-fluid, grade: DOT 5.1, family: glycol, cautions: [brake-fluid] }
)"},
    {.sheet = examine}};

}  // namespace sheafc
