// SPDX-License-Identifier: GPL-2.0-or-later
// The rules of linking: what sheets can get wrong about each other.
#pragma once

#include <span>
#include <string_view>

#include "compiler/source/rule.h"

namespace sheafc {
namespace rule {

inline constexpr std::string_view duplicate_sheet = "duplicate-sheet";
inline constexpr std::string_view unknown_base = "unknown-base";
inline constexpr std::string_view circular_base = "circular-base";
inline constexpr std::string_view wrong_base = "wrong-base";
inline constexpr std::string_view base_without_fits = "base-without-fits";
inline constexpr std::string_view unknown_entry = "unknown-entry";
inline constexpr std::string_view circular_like = "circular-like";
inline constexpr std::string_view wrong_like = "wrong-like";
inline constexpr std::string_view kind_differs = "kind-differs";
inline constexpr std::string_view unknown_caution = "unknown-caution";
inline constexpr std::string_view duplicate_caution = "duplicate-caution";
inline constexpr std::string_view duplicate_words = "duplicate-words";
inline constexpr std::string_view former_name_taken = "former-name-taken";
inline constexpr std::string_view variant_gap = "variant-gap";
inline constexpr std::string_view variant_overlap = "variant-overlap";
inline constexpr std::string_view variant_outside_fits = "variant-outside-fits";
inline constexpr std::string_view long_chain = "long-chain";
inline constexpr std::string_view too_many_entries = "too-many-entries";

}  // namespace rule

std::span<const RuleInfo> link_rules();

}  // namespace sheafc
