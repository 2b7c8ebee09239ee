// SPDX-License-Identifier: GPL-2.0-or-later
// What benches and parts lists write short. Only what is no word of its own.
#include <algorithm>
#include <array>

#include "query/search/draft.h"
#include "query/search/short_word.h"

namespace sheaf {
namespace {

struct Abbreviation {
  ShortWord brief, whole;
};

// clang-format off
constexpr auto abbreviations = std::to_array<Abbreviation>({
    {"adj", "adjuster"}, {"adjstr", "adjuster"}, {"axl", "axle"}, {"blt", "bolt"}, {"blts", "bolts"},
    {"bolz", "bolts"}, {"brg", "bearing"}, {"brgs", "bearings"}, {"brk", "brake"}, {"brng", "bearing"}, {"brngs", "bearings"}, {"brkt", "bracket"}, {"btm", "bottom"}, {"bttm", "bottom"},
    {"calip", "caliper"}, {"chn", "chain"}, {"clnce", "clearance"}, {"clr", "clearance"}, {"clrnc", "clearance"},
    {"cltch", "clutch"}, {"clth", "clutch"}, {"comp", "compression"}, {"crk", "crank"}, {"cvr", "cover"}, {"cyl", "cylinder"},
    {"dmpr", "damper"}, {"drn", "drain"}, {"ex", "exhaust"}, {"exh", "exhaust"}, {"fltr", "filter"}, {"frk", "fork"}, {"frnt", "front"}, {"frt", "front"},
    {"gbox", "gearbox"}, {"gkt", "gasket"}, {"gskt", "gasket"}, {"gskts", "gaskets"}, {"hbar", "handlebar"}, {"hbars", "handlebars"},
    {"hgt", "height"}, {"hsg", "housing"}, {"hsng", "housing"}, {"ht", "height"}, {"inl", "inlet"}, {"insp", "inspection"}, {"lck", "lock"}, {"lnk", "link"}, {"lvr", "lever"},
    {"lvrs", "levers"}, {"lwr", "lower"}, {"lwer", "lower"}, {"mtg", "mounting"}, {"pdl", "pedal"}, {"pist", "piston"}, {"pmp", "pump"},
    {"prld", "preload"}, {"prs", "pressure"}, {"reb", "rebound"}, {"rkr", "rocker"}, {"scrw", "screw"}, {"scrws", "screws"},
    {"shft", "shaft"}, {"spkt", "sprocket"}, {"sprg", "spring"}, {"sprkt", "sprocket"}, {"spr", "spring"},
    {"stat", "thermostat"}, {"strg", "steering"}, {"stg", "steering"}, {"susp", "suspension"}, {"swg", "swingarm"},
    {"tens", "tensioner"}, {"therm", "thermostat"}, {"thk", "thickness"}, {"thkn", "thickness"}, {"thr", "throttle"},
    {"tq", "torque"}, {"trq", "torque"}, {"tstat", "thermostat"}, {"upr", "upper"}, {"vlv", "valve"}, {"vlvs", "valves"},
    {"whl", "wheel"}, {"wshr", "washer"}, {"xhaust", "exhaust"}});
struct Slashed {
  ShortWord brief;
  std::array<std::string_view, 2> whole;
};

constexpr auto slashed = std::to_array<Slashed>({
    {"i/d", {"id", ""}}, {"l/h", {"left", "hand"}}, {"o/d", {"od", ""}}, {"r/h", {"right", "hand"}}, {"w/", {"with", ""}},
    {"w/o", {"without", ""}}});
// clang-format on

}  // namespace

std::vector<std::string> whole_of_slashed(std::string_view brief) {
  std::vector<std::string> words;
  const auto found = std::ranges::find(slashed, brief, [](const Slashed& each) { return each.brief.text(); });
  if (found == slashed.end()) return words;
  for (const auto word : found->whole)
    if (!word.empty()) words.emplace_back(word);
  return words;
}

std::string_view whole_of(std::string_view brief) {
  const auto found = std::ranges::find(abbreviations, brief, [](const Abbreviation& each) { return each.brief.text(); });
  return found == abbreviations.end() ? std::string_view() : found->whole.text();
}

}  // namespace sheaf
