// SPDX-License-Identifier: GPL-2.0-or-later
// What there is to say about a rule, wherever in the compiler it is kept: its row in the lists, and its
// page for a writer who asks "why?". Each folder declares its own rules in one table of these.
#pragma once

#include <span>
#include <string_view>

#include "compiler/source/diagnostics.h"

namespace sheafc {

struct RuleInfo {
  std::string_view name;     // in plain words: "torque-over-proof-load"
  Severity severity;         // as reported unless a report says otherwise
  std::string_view summary;  // one line, no period
  std::string_view why;      // a short paragraph: what goes wrong if it is let through
  std::string_view wrong;    // YAML that breaks the rule and no other; empty if none can be shown
  std::string_view right;    // the same, mended
};

// The rules of this folder: from bytes to a located tree.
std::span<const RuleInfo> source_rules();

}  // namespace sheafc
