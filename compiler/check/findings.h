// SPDX-License-Identifier: GPL-2.0-or-later
// What the rules found, sheet by sheet and group by group, with the facts that they found it from: enough to
// find out what a change of few sheets changes, without the others.
//
//   Findings findings;
//   run_rules(sheets, options, sink, &findings);        // all of it
//   ...                                                 // a few sheets are edited, read and linked
//   run_rules_again({few, names, changed}, options, findings, sink);
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "compiler/check/check.h"
#include "compiler/check/told_facts.h"

namespace sheafc {

struct SheetFindings {
  Diagnostics reports;  // of the rules that see the sheet alone
  bool allows = false;  // it sets a rule aside: always examined again, for what that is used for
};

// Of a group whose judgement looked at sheets. What one says that did not depends on its facts, and is
// nothing.
struct GroupFindings {
  Likeness alike = 0;
  std::vector<std::uint32_t> looked_at;  // numbers of sheets, ascending
  Diagnostics reports;
};

// Sheets have the numbers of their places among the run's own sheets, by name.
struct Findings {
  ToldFacts told;
  std::vector<SheetFindings> sheets;
  std::vector<GroupFindings> groups;  // by likeness
};

struct FewSheets {
  const LinkedSheets&
      sheets;  // those that changed, those with allowances, all that is looked at; every table
  std::span<const std::string> names;       // of all sheets of the run, in order
  std::span<const std::uint32_t> examined;  // of them, ascending: what changed, and what `allows`
};

// Makes the findings and the reports those of a run over all sheets. None have been added, taken away or
// renamed. The answer is empty then; else nothing was done, and it names sheets that would have to be among
// the few. Findings whose facts turn out not to be sound are of no more use.
std::vector<std::uint32_t> run_rules_again(const FewSheets& few, const CheckOptions& options,
                                           Findings& findings, Diagnostics& sink);

}  // namespace sheafc
