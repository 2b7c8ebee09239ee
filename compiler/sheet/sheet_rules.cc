// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/sheet/sheet_rules.h"

namespace sheafc {

std::span<const RuleInfo> sheet_rules() { return {}; }

}  // namespace sheafc
