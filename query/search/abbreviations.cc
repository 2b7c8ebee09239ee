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
    {"brg", "bearing"}, {"brgs", "bearings"}, {"brk", "brake"}, {"brkt", "bracket"}, {"btm", "bottom"}, {"bttm", "bottom"},
    {"calip", "caliper"}, {"chn", "chain"}, {"clnce", "clearance"}, {"clr", "clearance"}, {"clrnc", "clearance"},
    {"cltch", "clutch"}, {"clth", "clutch"}, {"comp", "compression"}, {"crk", "crank"}, {"cvr", "cover"}, {"cyl", "cylinder"},
    {"dmpr", "damper"}, {"drn", "drain"}, {"ex", "exhaust"}, {"exh", "exhaust"}, {"fltr", "filter"}, {"frk", "fork"}, {"frnt", "front"}, {"frt", "front"},
    {"gbox", "gearbox"}, {"gkt", "gasket"}, {"gskt", "gasket"}, {"hbar", "handlebar"}, {"hbars", "handlebars"},
    {"hsg", "housing"}, {"hsng", "housing"}, {"inl", "inlet"}, {"lck", "lock"}, {"lnk", "link"}, {"lvr", "lever"},
    {"lwr", "lower"}, {"mtg", "mounting"}, {"pdl", "pedal"}, {"pist", "piston"}, {"pmp", "pump"},
    {"prld", "preload"}, {"prs", "pressure"}, {"reb", "rebound"}, {"rkr", "rocker"}, {"scrw", "screw"}, {"scrws", "screws"},
    {"shft", "shaft"}, {"spkt", "sprocket"}, {"sprg", "spring"}, {"sprkt", "sprocket"}, {"spr", "spring"},
    {"stat", "thermostat"}, {"strg", "steering"}, {"stg", "steering"}, {"susp", "suspension"}, {"swg", "swingarm"},
    {"tens", "tensioner"}, {"therm", "thermostat"}, {"thk", "thickness"}, {"thkn", "thickness"}, {"thr", "throttle"},
    {"tq", "torque"}, {"trq", "torque"}, {"tstat", "thermostat"}, {"upr", "upper"}, {"vlv", "valve"}, {"vlvs", "valves"},
    {"whl", "wheel"}, {"wshr", "washer"}, {"xhaust", "exhaust"}});
// clang-format on

}  // namespace

std::string_view whole_of(std::string_view brief) {
  const auto found = std::ranges::find(abbreviations, brief, [](const Abbreviation& each) { return each.brief.text(); });
  return found == abbreviations.end() ? std::string_view() : found->whole.text();
}

}  // namespace sheaf
