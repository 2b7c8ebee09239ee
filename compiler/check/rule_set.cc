// SPDX-License-Identifier: GPL-2.0-or-later
// The list of rules, by subject. Their order shows nowhere: reports are sorted by place.
#include "compiler/check/rule_set.h"

namespace sheafc {

std::span<const Rule* const> all_check_rules() { return {}; }

}  // namespace sheafc
