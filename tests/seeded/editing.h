// SPDX-License-Identifier: GPL-2.0-or-later
// Small changes to a sheet's own bytes, found by the places of its typed values.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

#include "tests/seeded/seeding.h"

namespace seeded {

// The value of a field as it stands on the entry's own sheet; null if it is absent, inherited, of
// several values, or not on one line.
const sheafc::Value* own_value(const sheafc::LinkedEntry& entry, std::string_view key);

// Writes another text in place of a value, quoted where brackets around it would part it at commas.
Edit rewrite(const sheafc::LinkedEntry& entry, const sheafc::Value& value, const std::string& text);

// Takes a one-line field out; adds one after another. Nothing where the entry is not in block style.
std::optional<Edit> without(const sheafc::LinkedEntry& entry, std::string_view key);
std::optional<Edit> line_removed(const sheafc::LinkedEntry& entry, const sheafc::Field* field);
std::optional<Edit> add_after(const sheafc::LinkedEntry& entry, std::string_view key,
                              const std::string& line);

// "28 ± 3 N·m" -> "280 ± 3 N·m"; "2.5 bar" -> "25 bar"; "28" -> "2.8". The first number of the text.
std::string decimal_slipped(std::string_view text, bool up);
// The first number of the text replaced.
std::string with_first_number(std::string_view text, const std::string& number);

// "17.6": a value written with so many decimals.
std::string written(double value, int decimals);

}  // namespace seeded
