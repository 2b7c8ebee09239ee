// SPDX-License-Identifier: GPL-2.0-or-later
// What every page is told in its address: the machine, the year and the units of the tools in hand.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "query/answer/answer.h"
#include "query/search/find.h"
#include "query/web/html.h"
#include "query/web/opened.h"
#include "query/web/request.h"

namespace sheaf {

// What a page is made from.
struct Asking {
  const HttpRequest& request;
  Opened& opened;
  std::string today;             // 2026-11-25
  std::optional<Crib> own = {};  // the asker's wrenches, instead of the shop's

  const Crib* crib() const { return own ? &*own : opened.crib(); }
  std::string given(std::string_view name) const { return std::string(request.parameter(name)); }
};

// machine, year, frame, market, kind, assembly; a year that is no number is left out.
Filters filters_of(const HttpRequest& request);
// What of these a link to another page takes along.
std::vector<Given> carried(const HttpRequest& request);

// "fork brake" -> "fork", "brake", as a shell hands words to the command line.
std::vector<std::string> typed_words(std::string_view typed);

// "lbf·ft,psi": every unit that is known, in that order.
PreferredUnits units_of(const HttpRequest& request);
// The choices that a page offers: its value, and what is shown.
struct UnitChoice {
  std::string_view value, words;
};
std::span<const UnitChoice> unit_choices();

}  // namespace sheaf
