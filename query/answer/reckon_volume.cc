// SPDX-License-Identifier: GPL-2.0-or-later
// Oil in a tube: level and volume both ways, what heat adds, the air above it, and what to buy.
#include <algorithm>
#include <array>

#include "query/answer/picture.h"
#include "query/answer/reckon_work.h"
#include "query/trade/oil_volume.h"

namespace sheaf {
namespace {

constexpr std::string_view geometry_source = "geometry";

const Unit& mm() { return unit_named("mm"); }
const Unit& ml() { return unit_named("mL"); }

// What stands in the oil while the level is measured: said whole, or as a rod or a spring.
double displaced(Given& given, Work& work) {
  double volume = given.amount_if("displaced", ml()).value_or(0);
  const auto rod = given.amount_if("rod", mm()), dipped = given.amount_if("dipped", mm());
  const auto wire = given.amount_if("wire", mm()), mean = given.amount_if("mean", mm());
  const auto coils = given.number_if("coils");
  if (dipped && !rod) given.refuse("dipped is of a rod: its diameter is missing");
  if (rod && dipped) volume += work.of(rod_volume(*rod, *dipped));
  const int of_spring = int(bool(wire)) + int(bool(mean)) + int(bool(coils));
  if (of_spring == 3) volume += work.of(spring_wire_volume(*wire, *mean, *coils));
  if (of_spring == 1 || of_spring == 2) given.refuse("a spring in the oil needs wire, mean and coils");
  return volume;
}

void add_formulae(Work& work, bool displaces) {
  work.formula("V = π/4 · D² · h", std::string(geometry_source));
  if (displaces)
    work.formula("what is dipped: rod π/4 · d² · h, spring π/4 · d² · π · D · n",
                 std::string(geometry_source));
}

void work_level(Given& given, const OpenTables&, Work& work) {
  const double bore = given.amount("bore", mm());
  const double length = given.amount("length", mm());
  const auto volume = given.amount_if("volume", ml()), level = given.amount_if("level", mm());
  const double dipped = displaced(given, work);
  const double rod = given.amount_if("rod", mm()).value_or(0);
  const double rod_depth = given.amount_if("dipped", mm()).value_or(length);
  if (bool(volume) == bool(level)) given.refuse("either the volume or the level is needed");
  if (work.failed()) return;
  const OilTube tube{bore, length, dipped};
  const double found_level = level ? *level : work.of(level_below_rim(tube, *volume));
  const double found_volume = volume ? *volume : work.of(volume_at_level(tube, *level));
  if (volume) work.figure("level", found_level, mm(), {"in"}, "below the rim; less is MORE oil");
  if (level) work.figure("volume", found_volume, ml(), {"US fl oz"}, "in this leg");
  work.figure("1 mm of level", work.of(volume_per_mm(bore, 0)), ml(), {}, "more or less oil");
  if (dipped > 0) work.figure("displaced", dipped, ml(), {}, "by what stands in the oil");
  add_formulae(work, dipped > 0);
  work.caution(
      "Spring out or in, fork compressed or not: measure as the maker's sheet says, or the level means "
      "another volume.");
  if (!work.failed())
    work.picture(leg_picture({bore, length, found_level, rod, rod_depth, said(found_volume, ml())}));
}

void work_bottles(Given& given, const OpenTables&, Work& work) {
  const double volume = given.amount("volume", ml());
  const auto sizes = given.list("of", ml());
  if (work.failed()) return;
  std::vector<double> each;
  for (const Figure& size : sizes) each.push_back(in_unit(size, ml()).least);
  const auto bottles = work.of(bottles_for(volume, each));
  if (work.failed()) return;
  std::string words;
  for (std::size_t i = 0; i < bottles.counts.size(); ++i)
    if (bottles.counts[i] > 0)
      words += (words.empty() ? "" : " and ") + std::to_string(bottles.counts[i]) + " of " + shown(sizes[i]);
  work.words("buy", words);
  work.figure("left over", bottles.left_over_ml, ml());
  work.formula("whole bottles, least oil left over first, then fewest bottles", "counting");
}

void work_warmth(Given& given, const OpenTables&, Work& work) {
  const Unit& celsius = unit_named("°C");
  const double volume = given.amount("volume", ml());
  const double from = given.amount("from", celsius), to = given.amount("to", celsius);
  const auto own = given.numbers_if("expansion");
  if (work.failed()) return;
  const Band expansion = own.value_or(Band{0.00065, 0.0008});
  if (!own) work.taken("mineral oil grows by 0.00065 to 0.0008 of its volume a kelvin (rule of thumb)");
  const Band volumes{work.of(volume_at_temperature(volume, from, to, expansion.least)),
                     work.of(volume_at_temperature(volume, from, to, expansion.most))};
  const Band ordered{std::min(volumes.least, volumes.most), std::max(volumes.least, volumes.most)};
  work.figure("volume", ordered, ml(), {}, "at " + brief(to) + " °C", 4);
  work.formula("ΔV = V · β · ΔT", "definition of the expansion coefficient");
}

void work_air(Given& given, const OpenTables&, Work& work) {
  const Unit& bar = unit_named("bar");
  const double gap = given.amount("gap", mm()), stroke = given.amount("stroke", mm());
  const auto rest = given.amount_if("rest", bar);
  const auto exponent = given.number_if("exponent");
  if (work.failed()) return;
  if (!rest) work.taken("open to the air before closing: 1.013 bar absolute at rest");
  if (!exponent) work.taken("between slow (isothermal, exponent 1) and fast (adiabatic, exponent 1.4)");
  const double at_rest = rest.value_or(1.01325);
  const Band pressure{work.of(air_spring_pressure(at_rest, gap, stroke, exponent.value_or(1.0))),
                      work.of(air_spring_pressure(at_rest, gap, stroke, exponent.value_or(1.4)))};
  work.figure("pressure", pressure, bar, {"psi"}, "absolute, after the stroke", 2);
  work.formula("p = p0 · (h/(h − s))^n", "gas law of a closed column; losses are left out");
}

constexpr std::array<GivenName, 10> level_names = {
    {{"bore", "inside of the tube the oil stands in, 37.4 mm", true},
     {"length", "of the tube from its closed end to the rim, 580 mm", true},
     {"volume", "of oil in the leg, 512 mL"},
     {"level", "or the level below the rim, 118 mm"},
     {"displaced", "volume of all that stands in the oil, 40 mL"},
     {"rod", "diameter of a rod in the oil, 12 mm"},
     {"dipped", "how deep the rod stands in it, 300 mm"},
     {"wire", "of a spring in the oil, 4.5 mm"},
     {"mean", "diameter of its coils, 27 mm"},
     {"coils", "of it in the oil, 30"}}};
constexpr std::array<GivenName, 2> bottle_names = {
    {{"volume", "what is needed, 1024 mL", true}, {"of", "the bottles there are, 500 mL, 1 L", true}}};
constexpr std::array<GivenName, 4> warmth_names = {{{"volume", "512 mL", true},
                                                    {"from", "20 °C", true},
                                                    {"to", "80 °C", true},
                                                    {"expansion", "a kelvin, 0.0007"}}};
constexpr std::array<GivenName, 4> air_names = {{{"gap", "of air over the oil, 118 mm", true},
                                                 {"stroke", "80 mm", true},
                                                 {"rest", "absolute pressure at rest, 1.5 bar"},
                                                 {"exponent", "1 slow to 1.4 fast"}}};

const std::array<TopicEntry, 4> topics = {
    {{{"level", "Level of the oil from its volume, and back", level_names,
       "level bore 37.4 mm length 580 mm volume 512 mL"},
      work_level},
     {{"bottles", "Which bottles to buy", bottle_names, "bottles 1024 mL of 500 mL, 1 L"}, work_bottles},
     {{"warmth", "Volume of oil at another temperature", warmth_names, "warmth 512 mL from 20 °C to 80 °C"},
      work_warmth},
     {{"air", "Pressure of the air over the oil after a stroke", air_names, "air gap 118 mm stroke 80 mm"},
      work_air}}};

}  // namespace

std::span<const TopicEntry> volume_topics() { return topics; }

}  // namespace sheaf
