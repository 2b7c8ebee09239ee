// SPDX-License-Identifier: GPL-2.0-or-later
// The rules of linking: what sheets can get wrong about each other.
#pragma once

#include <span>
#include <string_view>

#include "compiler/source/rule.h"

namespace sheafc {
namespace rule {

inline constexpr std::string_view
    duplicate_sheet = "duplicate-sheet", unknown_base = "unknown-base", circular_base = "circular-base",
    wrong_base = "wrong-base", base_without_fits = "base-without-fits", unknown_entry = "unknown-entry",
    circular_like = "circular-like", wrong_like = "wrong-like", kind_differs = "kind-differs",
    unknown_caution = "unknown-caution", duplicate_caution = "duplicate-caution", duplicate_words = "duplicate-words",
    former_name_taken = "former-name-taken", variant_gap = "variant-gap", variant_overlap = "variant-overlap",
    variant_outside_fits = "variant-outside-fits", long_chain = "long-chain", too_many_entries = "too-many-entries";

}  // namespace rule

std::span<const RuleInfo> link_rules();

}  // namespace sheafc
