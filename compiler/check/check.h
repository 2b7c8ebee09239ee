// SPDX-License-Identifier: GPL-2.0-or-later
// The engineering rules: whether linked sheets can be true, from the data alone.
//
//   auto allowed = run_rules(sheets, {.today = *parse_date("2026-11-25")}, sink);
//
// An error is a figure that cannot be right, a warning one that is unlikely, a note something worth a
// look. What an entry or a sheet allows, with its reason, is not reported but returned.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/link/linked_sheets.h"
#include "compiler/source/diagnostics.h"
#include "compiler/source/rule.h"

namespace sheafc {

struct CheckOptions {
  std::optional<Date> today;  // for allowances that end; without it none has ended
  unsigned threads = 0;       // 0: one a core
};

// A rule set aside, as `sheafc check --allowed` lists it.
struct Allowed {
  std::string_view rule;
  std::string address;  // of the entry, or the sheet's name
  std::string reason;
  std::optional<Date> until;
  Span where;           // the rule's name in the sheet
};

// Runs every rule over the run's own sheets. Reports are neither sorted nor capped here. What is wanted for running
// the rules again is put into `findings` (compiler/check/findings.h).
struct Findings;
std::vector<Allowed> run_rules(const LinkedSheets& sheets, const CheckOptions& options, Diagnostics& sink,
                               Findings* findings = nullptr);

// What `sheafc explain` and the lists say of these rules.
std::span<const RuleInfo> check_rules();

}  // namespace sheafc
