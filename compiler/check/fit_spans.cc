// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/fit_spans.h"

#include <limits>

namespace sheafc {
namespace {

bool frames_part(const Frames& left, const Frames& right) {
  const FrameNumber left_from = take_apart(left.from), left_to = take_apart(left.to);
  const FrameNumber right_from = take_apart(right.from), right_to = take_apart(right.to);
  const std::string_view left_series = left.from.empty() ? left_to.series : left_from.series;
  const std::string_view right_series = right.from.empty() ? right_to.series : right_from.series;
  if (left_series.empty() || right_series.empty()) return false;
  if (left_series != right_series) return true;
  const bool left_first = !left.to.empty() && !right.from.empty() && left_to.number < right_from.number;
  const bool right_first = !right.to.empty() && !left.from.empty() && right_to.number < left_from.number;
  return left_first || right_first;
}

bool stated(const Frames& frames) { return !frames.from.empty() || !frames.to.empty(); }

}  // namespace

void add_claims(const LinkedSheet& sheet, std::initializer_list<std::string_view> besides, Facts& facts) {
  if (sheet.assembly().empty()) return;
  Likeness family = likeness({sheet.assembly()});
  for (const std::string_view part : besides) family = likeness(family, part);
  for (std::size_t i = 0; i < sheet.fits.size(); ++i) {
    const Fit& fit = sheet.fits[i];
    Fact& claim = facts.add(likeness(likeness(family, fit.make), fit.model), 0);
    claim.entry = static_cast<std::uint32_t>(i);
    set_years(claim, fit.years);
  }
}

int first_year(const Years& years) { return years.from ? years.from : std::numeric_limits<int>::min() / 2; }
int last_year(const Years& years) { return years.to ? years.to : std::numeric_limits<int>::max() / 2; }

bool meet(const Fit& left, const Fit& right) {
  if (left.make != right.make || left.model != right.model) return false;
  if (!left.market.empty() && !right.market.empty() && left.market != right.market) return false;
  if (first_year(left.years) > last_year(right.years) || first_year(right.years) > last_year(left.years))
    return false;
  return !(stated(left.frames) && stated(right.frames) && frames_part(left.frames, right.frames));
}

}  // namespace sheafc
