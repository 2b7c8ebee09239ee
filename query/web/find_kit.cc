// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/find_kit.h"

#include "query/answer/kit_sheets.h"

namespace sheaf {

Result<FoundKit> find_kit(const Asking& asking) {
  const auto& libraries = asking.opened.libraries();
  Lexicon lexicon(libraries);
  const auto words = typed_words(asking.request.parameter("q"));
  const Filters filters = filters_of(asking.request);
  if (words.empty() && filters.machine.empty()) return Failure{"no job is given"};
  auto found = find_kit_sheets(words, filters, lexicon);
  if (!found) return found.failure();
  if (found->choice) return FoundKit{std::nullopt, found->choice};
  auto kit = build_kit(found->sheets, {libraries, asking.crib(), asking.today});
  if (!kit) return kit.failure();
  return FoundKit{std::move(kit).value(), std::nullopt};
}

}  // namespace sheaf
