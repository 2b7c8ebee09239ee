// SPDX-License-Identifier: GPL-2.0-or-later
// Brings together what is alike in the facts of all sheets and has the rules judge it. Internal to check.
#pragma once

#include <vector>

#include "compiler/check/ledger.h"
#include "compiler/check/rule_set.h"

namespace sheafc {

// `sheets` in the order of the run's own sheets.
void judge_facts(const std::vector<SheetFacts>& sheets, Look& look, Ledger& ledger, Diagnostics& sink,
                 unsigned threads);

}  // namespace sheafc
