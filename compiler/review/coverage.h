// SPDX-License-Identifier: GPL-2.0-or-later
// What is recorded for each machine, what its peers have and it has not, and what was checked long ago or not
// at all.
#pragma once

#include <map>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "query/library/record.h"

namespace sheafc {

// Of one assembly of one machine.
struct AssemblyCoverage {
  std::set<std::string> sheets;
  std::map<std::string, int> entries;   // by kind; variants of an entry count once
  std::set<std::string> missing_kinds;  // that most other machines have on this assembly
  std::string oldest_check;             // the earliest date; empty if nothing was checked
  int entries_in_all = 0;
  int unchecked = 0;   // entries without a date of checking
  int old = 0;         // checked before the day that was given
  int one_reader = 0;  // critical entries that no second reader has seen
  int unsure = 0;      // second-hand or disputed
};

struct MachineCoverage {
  std::string make, model;
  std::map<std::string, AssemblyCoverage> assemblies;
  std::set<std::string> missing;  // assemblies that most other machines have
};

// `old_before`, as 2023-11-25: what was checked earlier counts as old. Sorted by make and model.
std::vector<MachineCoverage> coverage(std::span<const sheaf::SheetRecord> sheets,
                                      const std::string& old_before);

std::string coverage_text(std::span<const MachineCoverage> machines);
// {"schema":1,"machines":[...]}
std::string coverage_json(std::span<const MachineCoverage> machines);

}  // namespace sheafc
