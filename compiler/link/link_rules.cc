// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/link/link_rules.h"

namespace sheafc {

std::span<const RuleInfo> link_rules() { return {}; }

}  // namespace sheafc
