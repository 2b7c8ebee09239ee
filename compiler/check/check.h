// SPDX-License-Identifier: GPL-2.0-or-later
// The engineering rules: whether linked sheets can be true, from the data alone.
//
//   auto allowed = run_rules(sheets, {.today = *parse_date("2026-11-25")}, sink);
//
// An error is a figure that cannot be right, a warning one that is unlikely, a note something worth a
// look. What an entry or a sheet allows, with its reason, is not reported but returned.
//
// The sheets of a large folder are examined in parts, and afterwards only what they told each other is kept:
//
//   RuleRun run(count, {.today = ...});
//   for (...) run.examine(linked, some);                                // all of them, once
//   auto wanted = run.judge({});
//   while (!wanted.empty()) wanted = run.judge(those);                  // the wanted sheets, linked
//   auto allowed = run.end(sink);
#pragma once

#include <cstdint>
#include <memory>
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
  Span where;  // the rule's name in the sheet
};

// Numbers are places among the run's own sheets, by name.
struct NumberedSheet {
  std::uint32_t number = 0;
  const LinkedSheet* sheet = nullptr;
};

struct Findings;  // compiler/check/findings.h: what is wanted for running the rules again

class RuleRun {
 public:
  // Of so many sheets.
  RuleRun(std::size_t sheets, const CheckOptions& options);
  ~RuleRun();

  // Sheets in order, linked with every table of the run. How many errors were found on them.
  int examine(const LinkedSheets& linked, std::span<const NumberedSheet> sheets);
  // When all were examined: judges what they told each other. The answer names the sheets that a judgement
  // must look at and that are not among these; it is asked again with them, linked anew, until none are
  // wanted. At most about `most_wanted` are named at once.
  std::vector<std::uint32_t> judge(std::span<const NumberedSheet> among);
  // Afterwards. Reports are neither sorted nor capped here.
  std::vector<Allowed> end(Diagnostics& sink, Findings* findings = nullptr);

  static constexpr std::size_t most_wanted = 1'000;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

// Runs every rule over the run's own sheets, which are all in memory.
std::vector<Allowed> run_rules(const LinkedSheets& sheets, const CheckOptions& options, Diagnostics& sink,
                               Findings* findings = nullptr);

// What `sheafc explain` and the lists say of these rules.
std::span<const RuleInfo> check_rules();

}  // namespace sheafc
