// SPDX-License-Identifier: GPL-2.0-or-later
// Single parts: springs, fits, and O-rings in their grooves.
#include <algorithm>
#include <array>
#include <cmath>

#include "query/answer/picture.h"
#include "query/answer/reckon_tables.h"
#include "query/answer/reckon_work.h"
#include "query/trade/o_ring.h"
#include "query/trade/size.h"
#include "query/trade/spring.h"

namespace sheaf {
namespace {

const Unit& mm() { return unit_named("mm"); }
const Unit& um() { return unit_named("µm"); }
const Unit& rate_unit() { return unit_named("N/mm"); }
const Unit& newton() { return unit_named("N"); }

// The mean diameter by whichever of the three was measured.
double read_mean(Given& given, double wire) {
  const auto outside = given.amount_if("outside", mm()), inside = given.amount_if("inside", mm());
  const auto mean = given.amount_if("mean", mm());
  if (int(bool(outside)) + int(bool(inside)) + int(bool(mean)) != 1)
    given.refuse("one diameter of the coils is needed: outside, inside or mean");
  if (outside) return mean_from_outside(*outside, wire);
  if (inside) return mean_from_inside(*inside, wire);
  return mean.value_or(0);
}

Band read_modulus(Given& given, const OpenTables& open, Work& work) {
  if (const auto modulus = given.band_if("modulus", unit_named("MPa"))) return *modulus;
  const auto material = given.text_if("material");
  if (!material) {
    given.refuse(
        "the wire's material or its shear modulus is needed: material music wire, or modulus 81 500 MPa");
    return {};
  }
  const auto libraries = work.of(open());
  if (work.failed()) return {};
  const auto found = work.of(shear_modulus(libraries, *material));
  if (!work.failed()) work.table(found.table);
  return {found.mpa, found.mpa};
}

double read_coils(Given& given, Work& work) {
  const auto active = given.number_if("active"), all = given.number_if("coils");
  if (bool(active) == bool(all)) given.refuse("either active coils or all coils are needed");
  if (all) work.taken("two coils of all do not work, as with closed and ground ends");
  return active ? *active : all.value_or(0) - 2;
}

void work_spring(Given& given, const OpenTables& open, Work& work) {
  const double wire = given.amount("wire", mm());
  const CoilSpring spring{wire, read_mean(given, wire), read_coils(given, work)};
  const auto shortened = given.amount_if("shortened", mm());
  const Band modulus = read_modulus(given, open, work);
  if (work.failed()) return;
  const Band rate = work.of(spring_rate(spring, modulus));
  work.figure("rate", rate, rate_unit(), {"kgf/mm", "lbf/in"});
  work.words("index", brief(std::round(spring_index(spring) * 10) / 10), "mean diameter over wire");
  if (shortened) {
    const Band force{work.of(spring_force(rate.least, *shortened)),
                     work.of(spring_force(rate.most, *shortened))};
    work.figure("force", force, newton(), {"lbf"}, "shortened by " + brief(*shortened) + " mm");
  }
  work.formula("k = G · d⁴/(8 · D³ · n)", "Shigley, Mechanical Engineering Design, Eq. 10-9; EN 13906-1");
  work.caution("The wire's diameter counts by its fourth power: 0.1 mm of 4.5 mm is 9 % of the rate.");
}

void work_springs(Given& given, const OpenTables&, Work& work) {
  const double first = given.amount("first", rate_unit()), second = given.amount("and", rate_unit());
  if (work.failed()) return;
  work.figure("one on the other", work.of(series_rate(first, second)), rate_unit(), {"kgf/mm", "lbf/in"},
              "until the softer is solid");
  work.figure("side by side", work.of(parallel_rate(first, second)), rate_unit(), {"kgf/mm", "lbf/in"},
              "as the two legs of a fork");
  work.formula("in series 1/k = 1/k1 + 1/k2; in parallel k = k1 + k2", "elementary mechanics");
}

std::string_view verdict_words(Inspection verdict) {
  switch (verdict) {
    case Inspection::inside:
      return "inside its limits";
    case Inspection::outside:
      return "OUTSIDE its limits";
    case Inspection::cannot_tell:
      return "cannot tell: the uncertainty reaches over a limit";
  }
  return {};
}

// Capitals are holes.
std::string class_text(const ToleranceClass& tolerance) {
  std::string text = tolerance.letter + std::to_string(tolerance.grade);
  if (tolerance.hole)
    std::ranges::transform(text, text.begin(),
                           [](char c) { return c >= 'a' && c <= 'z' ? char(c - 'a' + 'A') : c; });
  return text;
}

// The limits of one of the two parts, and where a measured one stands.
Limits add_limits(Given& given, Work& work, const std::string& part, double nominal,
                  const ToleranceClass& tolerance, const ToleranceTables& tables, double uncertainty) {
  const Limits limits = work.of(limits_of(nominal, tolerance, tables));
  const auto measured = given.amount_if(part, mm());
  if (work.failed()) return limits;
  work.figure(part, limits.mm(), mm(), {}, class_text(tolerance), 6);
  if (measured)
    work.words("measured " + part, std::string(verdict_words(inspect(*measured, uncertainty, limits))),
               brief(*measured) + " ± " + brief(uncertainty) + " mm");
  return limits;
}

void add_fit(Work& work, const Limits& hole, const Limits& shaft) {
  const Fit fit = fit_of(hole, shaft);
  work.words("fit", std::string(name_of(fit.kind)));
  work.figure("clearance", fit.clearance_um, um(), {},
              fit.clearance_um.least < 0 ? "below 0 is interference" : "");
}

void work_fit(Given& given, const OpenTables& open, Work& work) {
  const std::string text = given.text("fit");
  const double uncertainty = given.amount_if("uncertainty", mm()).value_or(0.005);
  if (work.failed()) return;
  const auto fit = work.of(parse_fit(text, Input::prompt));
  if (work.failed()) return;
  if (!fit.nominal) return given.refuse("the nominal size is missing, as in 30 H7/g6");
  const auto libraries = work.of(open());
  if (work.failed()) return;
  const FitRows rows = work.of(fit_rows(libraries));
  if (work.failed()) return;
  const ToleranceTables tables{rows.tolerances, rows.deviations};
  const double nominal = approximate(*fit.nominal);
  std::optional<Limits> hole, shaft;
  if (fit.hole) hole = add_limits(given, work, "hole", nominal, *fit.hole, tables, uncertainty);
  if (fit.shaft) shaft = add_limits(given, work, "shaft", nominal, *fit.shaft, tables, uncertainty);
  if (hole && shaft && !work.failed()) add_fit(work, *hole, *shaft);
  work.table("widths and deviations of ISO 286-1 (2010); the deviations are from memory");
  work.formula("limits = nominal + deviation, and less or plus the width of the grade", "ISO 286-1:2010");
  work.caution("The maker's wear limit comes before a fit of the standard.");
}

ORing read_ring(Given& given, Work& work) {
  const std::string text = given.text("ring");
  if (given.fault()) return {};
  const Size size = work.of(parse_size(text, Input::prompt));
  if (work.failed()) return {};
  if (size.count != 2) given.refuse("a ring is inside × section, 34.5x2.65");
  return {dimension_mm(size, 0), dimension_mm(size, 1)};
}

void work_ring(Given& given, const OpenTables&, Work& work) {
  const ORing ring = read_ring(given, work);
  const Gland gland{given.amount("depth", mm()), given.amount("width", mm()),
                    given.amount_if("groove", mm()).value_or(0)};
  if (work.failed()) return;
  const auto verdict = work.of(reckon_gland(ring, gland));
  const Unit& per_cent = unit_named("%");
  work.figure("squeeze", verdict.squeeze * 100, per_cent, {},
              "in common use: fixed 15–30 %, reciprocating 8–20 %", 2);
  work.figure("fill", verdict.fill * 100, per_cent, {}, "60–85 % usual, never over 90 % (from memory)", 2);
  if (gland.groove_diameter > 0) {
    work.figure("stretch", verdict.stretch * 100, per_cent, {}, "up to 5 % at rest (from memory)", 2);
    work.figure("section, stretched", verdict.section, mm());
  }
  work.formula("squeeze = (section − depth)/section; fill = π/4 · section²/(depth · width)", "geometry");
  work.caution("Same size is not same part: material and hardness differ.");
  if (!work.failed()) work.picture(gland_picture(ring, gland, verdict));
}

constexpr std::array<GivenName, 9> spring_names = {{{"wire", "4.5 mm", true},
                                                    {"outside", "diameter of the coils, 32 mm"},
                                                    {"inside", "or inside, 23 mm"},
                                                    {"mean", "or mean, 27.5 mm"},
                                                    {"active", "coils that work, 30"},
                                                    {"coils", "or all of them, 32"},
                                                    {"material", "of the wire, as the table names it"},
                                                    {"modulus", "or its shear modulus, 78 500..81 500 MPa"},
                                                    {"shortened", "from its free length, 20 mm"}}};
constexpr std::array<GivenName, 2> springs_names = {{{"first", "8 N/mm", true}, {"and", "12 N/mm", true}}};
constexpr std::array<GivenName, 4> fit_names = {
    {{"fit", "30 H7/g6", true},
     {"hole", "as measured, 30.012 mm"},
     {"shaft", "as measured, 29.985 mm"},
     {"uncertainty", "of measuring, 0.005 mm if it is not given"}}};
constexpr std::array<GivenName, 4> ring_names = {{{"ring", "inside × section, 34.5x2.65", true},
                                                  {"depth", "of the groove to the sealed face, 2.1 mm", true},
                                                  {"width", "of the groove, 3.6 mm", true},
                                                  {"groove", "diameter of its bottom on a shaft, 35.5 mm"}}};

const std::array<TopicEntry, 4> topics = {
    {{{"spring", "Rate and force of a coil spring", spring_names,
       "spring wire 4.5 mm outside 32 mm active 30 modulus 78500..81500 MPa shortened 20 mm"},
      work_spring},
     {{"springs", "Two springs together", springs_names, "springs 8 N/mm and 12 N/mm"}, work_springs},
     {{"fit", "Limits of a bore and a shaft by ISO 286, and whether a part is inside", fit_names,
       "fit 30 H7/g6 shaft 29.985 mm"},
      work_fit},
     {{"ring", "An O-ring in its groove", ring_names,
       "ring 34.5x2.65 depth 2.1 mm width 3.6 mm groove 35.5 mm"},
      work_ring}}};

}  // namespace

std::span<const TopicEntry> part_topics() { return topics; }

}  // namespace sheaf
