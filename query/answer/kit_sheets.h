// SPDX-License-Identifier: GPL-2.0-or-later
// Which sheets a kit is for: words for one job or several, as they are typed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/answer/sheet_choice.h"

namespace sheaf {

// Assemblies, each once, with the entries that fit; or, for the first job that leads to none or to rivals,
// which of them must be named.
struct KitSheets {
  std::vector<SheetRecord> sheets;
  std::optional<SheetChoice> choice;
};

// Jobs are parted by commas, or are single words with the name of a sheet. Without words, a machine's filters
// take all of its assemblies. Fails if a filter cannot be read, or a library is damaged.
Result<KitSheets> find_kit_sheets(const std::vector<std::string>& words, const Filters& filters,
                                  Lexicon& lexicon);

}  // namespace sheaf
