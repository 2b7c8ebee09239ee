// SPDX-License-Identifier: GPL-2.0-or-later
// The rules that a sheet can break by itself, before anything is looked up: their names, and the table
// that `sheafc explain` and the lists print.
#pragma once

#include <span>
#include <string_view>

#include "compiler/source/rule.h"

namespace sheafc {
namespace rule {

// A value that is not there is the source's to describe (SourceFile::empty_value); an empty list is ours.
inline constexpr std::string_view empty_value = "empty-value";

inline constexpr std::string_view unknown_form = "unknown-form";
inline constexpr std::string_view sheet_name = "sheet-name";
inline constexpr std::string_view file_name = "file-name";
inline constexpr std::string_view unknown_key = "unknown-key";
inline constexpr std::string_view missing_key = "missing-key";
inline constexpr std::string_view wrong_shape = "wrong-shape";
inline constexpr std::string_view bad_name = "bad-name";
inline constexpr std::string_view duplicate_entry = "duplicate-entry";
inline constexpr std::string_view decimal_comma = "decimal-comma";
inline constexpr std::string_view unreadable_text = "unreadable-text";
inline constexpr std::string_view not_a_choice = "not-a-choice";
inline constexpr std::string_view not_yes_or_no = "not-yes-or-no";
inline constexpr std::string_view unreadable_number = "unreadable-number";
inline constexpr std::string_view unreadable_date = "unreadable-date";
inline constexpr std::string_view unreadable_years = "unreadable-years";
inline constexpr std::string_view unreadable_frames = "unreadable-frames";
inline constexpr std::string_view unreadable_count = "unreadable-count";
inline constexpr std::string_view unreadable_figure = "unreadable-figure";
inline constexpr std::string_view unreadable_interval = "unreadable-interval";
inline constexpr std::string_view unreadable_thread = "unreadable-thread";
inline constexpr std::string_view unreadable_drive = "unreadable-drive";
inline constexpr std::string_view unreadable_size = "unreadable-size";
inline constexpr std::string_view unreadable_bearing = "unreadable-bearing";
inline constexpr std::string_view unreadable_address = "unreadable-address";
inline constexpr std::string_view unreadable_pattern = "unreadable-pattern";
inline constexpr std::string_view variant_without_when = "variant-without-when";
inline constexpr std::string_view repeated_value = "repeated-value";
inline constexpr std::string_view split_sentence = "split-sentence";
inline constexpr std::string_view bad_column = "bad-column";
inline constexpr std::string_view row_width = "row-width";
inline constexpr std::string_view row_without_key = "row-without-key";
inline constexpr std::string_view duplicate_row = "duplicate-row";

}  // namespace rule

std::span<const RuleInfo> sheet_rules();

}  // namespace sheafc
