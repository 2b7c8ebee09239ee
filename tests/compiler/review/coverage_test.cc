// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/review/coverage.h"

#include <doctest/doctest.h>

#include "tests/compiler/linking.h"

using namespace sheafc;

namespace {

std::string sheet(const std::string& name, const std::string& assembly, const std::string& model,
                  const std::string& body,
                  const std::string& checked = "on: 2026-10-02, by: workshop, second: N.") {
  return "# file: " + name + ".yaml\nsheet: " + name + "\nassembly: " + assembly +
         "\nfits: { make: Haldrek, model: " + model + ", years: 2011.. }\nchecked: { " + checked + " }\n" +
         body;
}

const std::string bolt = "fasteners:\n  bolt: { name: bolt }\n";
const std::string oil = "fluids:\n  oil: { name: oil, purpose: fork-oil }\n";

std::vector<MachineCoverage> covered(const std::string& text) {
  const Linking linking(text);
  REQUIRE(linking.faults() == "none");
  return coverage(content_of(linking.linked, "x").sheets, "2023-11-25");
}

}  // namespace

TEST_CASE("an assembly that most other machines have is missed") {
  const auto machines = covered(sheet("a-fork", "fork", "A", bolt) + sheet("b-fork", "fork", "B", bolt) +
                                sheet("c-wheel", "front-wheel", "C", bolt));
  REQUIRE(machines.size() == 3);
  CHECK(machines[2].model == "C");
  CHECK(machines[2].missing == std::set<std::string>{"fork"});
  CHECK(machines[0].missing.empty());
}

TEST_CASE("a kind of entry that most others record on the assembly is missed") {
  const auto machines =
      covered(sheet("a-fork", "fork", "A", bolt + oil) + sheet("b-fork", "fork", "B", bolt + oil) +
              sheet("c-fork", "fork", "C", bolt));
  CHECK(machines[2].assemblies.at("fork").missing_kinds == std::set<std::string>{"fluid"});
  CHECK(machines[0].assemblies.at("fork").missing_kinds.empty());
}

TEST_CASE("what was checked long ago, by one reader, or is unsure is counted; variants count once") {
  const auto machines =
      covered(sheet("wheel", "front-wheel", "A",
                    "fasteners:\n  nut:\n    name: nut\n    variants: [{ years: ..2015, torque: 1 N·m }, { "
                    "years: 2016.., torque: 2 N·m }]\n"
                    "  bolt: { name: bolt, status: disputed }\nsteps:\n  fit: { name: fit, do: Fit it. }\n",
                    "on: 2020-01-02, by: workshop"));
  const AssemblyCoverage& wheel = machines.at(0).assemblies.at("front-wheel");
  CHECK(wheel.entries_in_all == 3);
  CHECK(wheel.old == 3);
  CHECK(wheel.unchecked == 0);
  CHECK(wheel.one_reader == 2);
  CHECK(wheel.unsure == 1);
  CHECK(wheel.oldest_check == "2020-01-02");
}
