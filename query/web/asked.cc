// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/asked.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace sheaf {
namespace {

constexpr std::array<UnitChoice, 5> choices = {{{"", "as written"},
                                                {"N·m,bar,mL,mm", "N·m · bar · mL"},
                                                {"lbf·ft,psi,US fl oz,in", "lbf·ft · psi · fl oz"},
                                                {"lbf·in,psi,US fl oz,in", "lbf·in · psi · fl oz"},
                                                {"kgf·m,bar,mL,mm", "kgf·m · bar · mL"}}};
constexpr std::size_t most_units = 8;
constexpr int last_year_asked = 9999;

int year_of(std::string_view text) {
  int year = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), year);
  const bool whole = fault == std::errc() && end == text.data() + text.size();
  return whole && year > 0 && year <= last_year_asked ? year : 0;
}

}  // namespace

Filters filters_of(const HttpRequest& request) {
  Filters filters;
  filters.machine = request.parameter("machine");
  filters.year = year_of(request.parameter("year"));
  filters.frame = request.parameter("frame");
  filters.market = request.parameter("market");
  filters.kind = request.parameter("kind");
  filters.assembly = request.parameter("assembly");
  return filters;
}

std::vector<Given> carried(const HttpRequest& request) {
  std::vector<Given> given;
  for (const std::string_view name : {"machine", "year", "frame", "market", "unit"})
    given.push_back({name, std::string(request.parameter(name))});
  return given;
}

std::vector<std::string> typed_words(std::string_view typed) {
  std::vector<std::string> words;
  for (std::size_t at = 0; at < typed.size();) {
    const std::size_t end = std::min(typed.find(' ', at), typed.size());
    if (end > at) words.emplace_back(typed.substr(at, end - at));
    at = end + 1;
  }
  return words;
}

PreferredUnits units_of(const HttpRequest& request) {
  PreferredUnits units;
  std::string_view rest = request.parameter("unit");
  while (!rest.empty() && units.size() < most_units) {
    const std::size_t end = std::min(rest.find(','), rest.size());
    for (const Unit* unit : readings(rest.substr(0, end))) units.push_back(unit);
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return units;
}

std::span<const UnitChoice> unit_choices() { return choices; }

}  // namespace sheaf
