// SPDX-License-Identifier: GPL-2.0-or-later
// Which allowances the sheets make, and which of them something was allowed by. Internal to check.
#pragma once

#include <mutex>
#include <set>
#include <string_view>
#include <vector>

#include "compiler/check/check.h"

namespace sheafc {

class Ledger {
 public:
  explicit Ledger(std::optional<Date> today) : today_(today) {}

  // Whether these fields allow the rule today; if so the allowance is booked as used.
  bool allows(const Fields& fields, std::string_view rule);

  // Every allowance of the sheets once, as `sheafc check --allowed` lists them; those that allow nothing,
  // have ended, or name no rule are reported.
  std::vector<Allowed> close(const LinkedSheets& sheets, Diagnostics& sink) const;

 private:
  bool has_ended(const Allowance& allowance) const;
  void report(const Allowance& allowance, Diagnostics& sink) const;

  std::optional<Date> today_;
  std::mutex mutex_;
  std::set<const Allowance*> used_;
};

bool makes_allowances(const LinkedSheet& sheet);

// The rules about allowances themselves.
extern const RuleInfo allowance_unused, allowance_ended, allowance_of_no_rule;

}  // namespace sheafc
