// SPDX-License-Identifier: GPL-2.0-or-later
// /drawing/….svg: the drawings of query/answer, each with an address of its own.
#include "query/answer/match_row.h"
#include "query/answer/wrench_drawing.h"
#include "query/web/find_answers.h"
#include "query/web/find_reckoning.h"
#include "query/web/find_wrench.h"
#include "query/web/pages.h"

namespace sheaf {
namespace {

Result<std::string> ring_of_entry(const Asking& asking) {
  const auto answers = answers_at(asking, asking.given("address"));
  if (!answers) return answers.failure();
  for (const auto& answer : *answers)
    if (const auto size = size_row(answer.entry); size && answer.entry.withdrawn.empty())
      return ring_picture(shape_of(answer.entry), *size, answer.name);
  return Failure{"no such ring"};
}

Result<std::string> ring_that_matches(const Asking& asking) {
  const auto matches = match({asking.given("q"), {}}, asking.opened.shelf());
  if (!matches) return matches.failure();
  for (const auto* list : {&matches->same, &matches->within})
    for (const auto& part : *list)
      if (part.dimensions) return ring_picture(part.shape, *part.dimensions, part.entry.name);
  return Failure{"nothing that fits can be drawn"};
}

Result<std::string> wrench_drawn(const Asking& asking) {
  const Crib* crib = asking.crib();
  if (!crib) return Failure{"no crib"};
  const auto found = find_wrench(asking, *crib);
  if (!found) return found.failure();
  const WrenchAnswer& answer = found->front().answer;
  if (const auto geometry = geometry_of(answer)) return svg(*geometry, answer);
  if (auto band = band_svg(answer)) return *band;
  return Failure{"there is nothing to draw"};
}

Result<std::string> reckoned_drawn(const Asking& asking) {
  const auto reckoning = find_reckoning(asking);
  if (!reckoning) return reckoning.failure();
  if (reckoning->picture.empty()) return Failure{"there is nothing to draw of this"};
  return reckoning->picture;
}

}  // namespace

Response drawing(const Asking& asking, std::string_view name) {
  const auto drawn = name == "entry.svg"    ? ring_of_entry(asking)
                     : name == "match.svg"  ? ring_that_matches(asking)
                     : name == "wrench.svg" ? wrench_drawn(asking)
                     : name == "reckon.svg" ? reckoned_drawn(asking)
                                            : Result<std::string>(Failure{"there is no such drawing"});
  if (!drawn) return trouble_page(404, drawn.failure().message, asking);
  return {200, "image/svg+xml", *drawn};
}

}  // namespace sheaf
