// SPDX-License-Identifier: GPL-2.0-or-later
// A fleet of any size that was never built: sheets of twenty entries each, plausible enough that the
// compiler accepts them and that words, sizes and figures are spread as in a real workshop. For
// benchmarks alone.
#pragma once

#include <string>
#include <vector>

#include "query/library/record.h"

namespace sheaf::test {

inline constexpr int entries_per_synthetic_sheet = 20;

// Sheet `number` of the fleet, always the same; ascending names with ascending numbers.
SheetRecord synthetic_sheet(int number);
std::vector<WordRecord> synthetic_words();

// The same sheet as a writer would type it; and the glossary's sheet.
std::string synthetic_yaml(const SheetRecord& sheet);
std::string synthetic_words_yaml();

}  // namespace sheaf::test
