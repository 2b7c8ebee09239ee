// SPDX-License-Identifier: GPL-2.0-or-later
// Rolling bearing designations (the basic numbers of ISO 15 and ISO 355 bearings) and their suffixes.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/quantity/number.h"
#include "query/quantity/result.h"
#include "query/trade/found.h"

namespace sheaf {

// "6203-2RS C3": basic designation, suffixes, and what the bore code says.
struct Bearing {
  std::string basic;              // "6203", "62/22", "NU205", "32006"
  std::string suffix;             // "2RS C3": canonical order, one space between
  std::optional<double> bore_mm;  // from the bore code where the designation gives it
};

// Takes any case and "6203-2rs", "6203 2RS C3", "6203.2rs/c3", "6203ZZ". Fails on a number whose
// series is none of those that bearings have ("2013"), and on unknown suffixes.
Result<Bearing> parse_bearing(std::string_view text, Input input);

// The longest bearing at the start of the text, which may go on: "6203 2rs both sides".
std::optional<Found<Bearing>> bearing_at(std::string_view text, Input input);

std::string to_text(const Bearing& bearing);  // "6203-2RS C3"

// What each part of the designation says: {"62", "deep groove ball, ..."}, {"03", "bore 17 mm"}, ...
struct Meaning {
  std::string part;
  std::string says;
};
std::vector<Meaning> explain(const Bearing& bearing);

}  // namespace sheaf
