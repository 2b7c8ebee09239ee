// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/rule.h"

namespace sheafc {

std::span<const RuleInfo> source_rules() { return {}; }

}  // namespace sheafc
