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

inline constexpr std::string_view
    unknown_form = "unknown-form", sheet_name = "sheet-name", file_name = "file-name", unknown_key = "unknown-key",
    missing_key = "missing-key", wrong_shape = "wrong-shape", bad_name = "bad-name",
    duplicate_entry = "duplicate-entry", decimal_comma = "decimal-comma", unreadable_text = "unreadable-text",
    not_a_choice = "not-a-choice", not_yes_or_no = "not-yes-or-no", unreadable_number = "unreadable-number",
    unreadable_date = "unreadable-date", unreadable_years = "unreadable-years",
    unreadable_frames = "unreadable-frames", unreadable_count = "unreadable-count",
    unreadable_figure = "unreadable-figure", unreadable_interval = "unreadable-interval",
    unreadable_thread = "unreadable-thread", unreadable_drive = "unreadable-drive",
    unreadable_size = "unreadable-size", unreadable_bearing = "unreadable-bearing",
    unreadable_address = "unreadable-address", unreadable_pattern = "unreadable-pattern",
    variant_without_when = "variant-without-when",
    repeated_value = "repeated-value", bad_column = "bad-column", row_width = "row-width",
    row_without_key = "row-without-key", duplicate_row = "duplicate-row";

}  // namespace rule

std::span<const RuleInfo> sheet_rules();

}  // namespace sheafc
