// SPDX-License-Identifier: GPL-2.0-or-later
// Brings together what is alike in the facts of all sheets and has the rules judge it. Internal to check.
#pragma once

#include <functional>
#include <vector>

#include "compiler/check/findings.h"
#include "compiler/check/ledger.h"
#include "compiler/check/rule_set.h"

namespace sheafc {

// Facts of all sheets, given in their order, by likeness. Leaves the sheets' facts empty.
std::vector<Fact> in_groups(std::vector<SheetFacts>& sheets, unsigned threads);

// The facts alike to the first of these.
FactGroup group_at(std::span<const Fact> facts);

// The findings, if the judgement looked at a sheet.
std::optional<GroupFindings> judge_group(FactGroup group, Look& look, Ledger& ledger);

}  // namespace sheafc
