// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/find_card.h"

namespace sheaf {

Result<FoundCard> find_card(const Asking& asking, const std::string& words) {
  const auto& libraries = asking.opened.libraries();
  Lexicon lexicon(libraries);
  auto found = find_sheets({words, filters_of(asking.request)}, lexicon);
  if (!found) return found.failure();
  SheetFindings hits = std::move(found).value();
  if (hits.sheets.size() != 1)
    return FoundCard{std::nullopt, sheet_choice(std::move(hits), words, libraries)};
  SheetHit& hit = hits.sheets.front();
  if (hit.sheet.form != "assembly")
    return Failure{hit.sheet.name + " is of the form " + hit.sheet.form + "; a card is of an assembly"};
  auto card = build_card(std::move(hit.sheet),
                         {libraries, hit.library, machine_of(hits.reading), asking.crib(), asking.today});
  if (!card) return card.failure();
  return FoundCard{std::move(card).value(), std::nullopt};
}

}  // namespace sheaf
