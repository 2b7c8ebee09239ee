// SPDX-License-Identifier: GPL-2.0-or-later
// Which allowances the sheets make, and which of them something was allowed by. An allowance is known by its
// place, since a sheet may be read twice. Internal to check.
#pragma once

#include <mutex>
#include <set>
#include <string_view>
#include <tuple>
#include <vector>

#include "compiler/check/check.h"

namespace sheafc {

class Ledger {
 public:
  explicit Ledger(std::optional<Date> today) : today_(today) {}

  // Whether these fields allow the rule today; if so the allowance is booked as used.
  bool allows(const Fields& fields, std::string_view rule);

  // Takes down the sheet's allowances. One thread.
  void list(const LinkedSheet& sheet);

  // Every allowance that was taken down, once, in that order, as `sheafc check --allowed` lists them; those
  // that allow nothing, have ended, or name no rule are reported.
  std::vector<Allowed> close(Diagnostics& sink) const;

 private:
  using Place = std::tuple<std::string_view, int, int, std::string>;  // file, line, column, rule
  struct Listed {
    std::string rule;  // as the sheet names it
    std::string address;
    std::string reason;
    std::optional<Date> until;
    Span where;
  };
  template <typename Made>  // an Allowance, or one that was listed
  static Place place_of(const Made& allowance) {
    return {allowance.where.file, allowance.where.line, allowance.where.column, allowance.rule};
  }
  void list(const Fields& fields, const std::string& address);
  bool has_ended(const std::optional<Date>& until) const { return today_ && until && *until < *today_; }
  void report(const Listed& allowance, Diagnostics& sink) const;

  std::optional<Date> today_;
  std::mutex mutex_;
  std::set<Place> used_;
  std::vector<Listed> listed_;
  std::set<Place> seen_;  // an inherited one is one allowance
};

bool makes_allowances(const LinkedSheet& sheet);

// The rules about allowances themselves.
extern const RuleInfo allowance_unused, allowance_ended, allowance_of_no_rule;

}  // namespace sheafc
