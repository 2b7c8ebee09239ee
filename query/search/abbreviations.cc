// SPDX-License-Identifier: GPL-2.0-or-later
// What benches and parts lists write short, or by its sound ("peddle"). Only what no bench means otherwise.
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
    {"1st", "first"}, {"2nd", "second"}, {"3rd", "third"}, {"adj", "adjuster"}, {"adjstr", "adjuster"},
    {"alt", "alternator"}, {"alu", "aluminium"}, {"axl", "axle"}, {"bak", "back"}, {"batt", "battery"}, {"bk", "back"}, {"blt", "bolt"}, {"blts", "bolts"},
    {"bolz", "bolts"}, {"brg", "bearing"}, {"brgs", "bearings"}, {"brk", "brake"}, {"brkt", "bracket"},
    {"brng", "bearing"}, {"brngs", "bearings"}, {"btm", "bottom"}, {"bttm", "bottom"}, {"calib", "calibration"},
    {"calip", "caliper"}, {"carb", "carburettor"}, {"chn", "chain"}, {"clnce", "clearance"}, {"clr", "clearance"},
    {"clrnc", "clearance"}, {"cltch", "clutch"}, {"clth", "clutch"}, {"comp", "compression"}, {"compr", "compression"}, {"crk", "crank"},
    {"ctr", "centre"}, {"cvr", "cover"}, {"cyl", "cylinder"}, {"diam", "diameter"}, {"dmpr", "damper"}, {"drn", "drain"},
    {"ex", "exhaust"}, {"exh", "exhaust"}, {"filt", "filter"}, {"flng", "flange"}, {"fltr", "filter"},
    {"frk", "fork"}, {"frnt", "front"}, {"frt", "front"}, {"gbox", "gearbox"}, {"gkt", "gasket"}, {"gskt", "gasket"},
    {"gskts", "gaskets"}, {"hbar", "handlebar"}, {"hbars", "handlebars"}, {"hd", "head"}, {"hgt", "height"},
    {"hsg", "housing"}, {"hsng", "housing"}, {"ht", "height"}, {"hyd", "hydraulic"}, {"inl", "inlet"},
    {"insp", "inspection"}, {"lck", "lock"}, {"lgth", "length"}, {"lnk", "link"}, {"lvr", "lever"},
    {"lvrs", "levers"}, {"lwer", "lower"}, {"lwr", "lower"}, {"mnt", "mount"}, {"mstr", "master"},
    {"mtg", "mounting"}, {"nbr", "number"}, {"nr", "number"}, {"nutz", "nuts"}, {"oot", "out"}, {"pdl", "pedal"}, {"peddle", "pedal"}, {"pist", "piston"},
    {"pmp", "pump"}, {"prld", "preload"}, {"prs", "pressure"}, {"rad", "radiator"}, {"reb", "rebound"},
    {"reg", "regulator"}, {"resvr", "reservoir"}, {"rkr", "rocker"}, {"rlr", "roller"}, {"rtr", "rotor"}, {"scr", "screw"},
    {"scrw", "screw"}, {"scrws", "screws"}, {"shft", "shaft"}, {"skt", "socket"}, {"slv", "sleeve"},
    {"spcr", "spacer"}, {"spd", "speed"}, {"spkt", "sprocket"}, {"spndl", "spindle"}, {"spr", "spring"},
    {"sprg", "spring"}, {"sprkt", "sprocket"}, {"stat", "thermostat"}, {"std", "standard"}, {"stg", "steering"},
    {"strg", "steering"}, {"susp", "suspension"}, {"swg", "swingarm"}, {"tens", "tensioner"}, {"therm", "thermostat"},
    {"thk", "thickness"}, {"thkn", "thickness"}, {"thr", "throttle"}, {"thru", "through"}, {"tork", "torque"}, {"tq", "torque"}, {"trns", "turns"},
    {"trq", "torque"}, {"tstat", "thermostat"}, {"upr", "upper"}, {"visc", "viscosity"}, {"vlv", "valve"}, {"vlvs", "valves"}, {"w", "with"},
    {"wght", "weight"}, {"whl", "wheel"}, {"wshr", "washer"}, {"wtr", "water"}, {"xhaust", "exhaust"}});
struct Slashed {
  ShortWord brief;
  std::array<std::string_view, 2> whole;
};

constexpr auto slashed = std::to_array<Slashed>({
    {"a/f", {"across", "flats"}}, {"b/light", {"brake", "light"}}, {"c/clip", {"circlip", ""}},
    {"c/shaft", {"countershaft", ""}}, {"c/stand", {"centre", "stand"}}, {"d/plug", {"drain", "plug"}},
    {"f/cap", {"fork", "cap"}}, {"f/pump", {"fuel", "pump"}}, {"f/wheel", {"flywheel", ""}},
    {"g/box", {"gearbox", ""}}, {"h/bar", {"handlebar", ""}}, {"h/bars", {"handlebars", ""}},
    {"h/brg", {"head", "bearing"}}, {"h/lamp", {"headlamp", ""}}, {"i/d", {"id", ""}}, {"k/stand", {"kickstand", ""}},
    {"l/h", {"left", "hand"}}, {"m/cyl", {"master", "cylinder"}}, {"o/d", {"od", ""}}, {"o/pump", {"oil", "pump"}},
    {"o/ring", {"o", "ring"}}, {"r/h", {"right", "hand"}}, {"s/arm", {"swingarm", ""}}, {"s/plug", {"spark", "plug"}},
    {"s/stand", {"side", "stand"}}, {"t/lock", {"threadlock", ""}}, {"t/stat", {"thermostat", ""}},
    {"t/valve", {"throttle", "valve"}}, {"w/", {"with", ""}}, {"w/brg", {"wheel", "bearing"}},
    {"w/o", {"without", ""}}, {"w/pump", {"water", "pump"}}});
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
  const auto found =
      std::ranges::find(abbreviations, brief, [](const Abbreviation& each) { return each.brief.text(); });
  return found == abbreviations.end() ? std::string_view() : found->whole.text();
}

}  // namespace sheaf
