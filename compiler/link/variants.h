// SPDX-License-Identifier: GPL-2.0-or-later
// Whether the variants of an entry part its machines cleanly: each year, frame number and market belongs
// to one of them and to one only.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "compiler/link/linked_sheets.h"

namespace sheafc {

// When a variant holds. What is absent holds for all.
struct When {
  std::optional<Years> years;
  std::optional<Frames> frames;
  std::string market;
  Span where;
};
When when_of(const Variant& variant);

// "2011..2012, frames ..HK4-004999, market north"
std::string to_text(const When& when);

// The part of the fit for which the variant holds; none if they do not meet.
std::optional<Fit> narrowed(const Fit& fit, const When& when);

// Gaps and overlaps, each reported once, at the variant (a gap: at the first variant). Without fits, years
// that no variant names are no gap: nobody says that the sheet is for them.
void check_variants(std::span<const Fit> fits, std::span<const When> variants, Diagnostics& sink);

}  // namespace sheafc
