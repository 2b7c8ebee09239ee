// SPDX-License-Identifier: GPL-2.0-or-later
// Oils by their viscosity: at another temperature, by grade, against each other, and mixed.
#include <array>
#include <cmath>

#include "query/answer/picture.h"
#include "query/answer/reckon_tables.h"
#include "query/answer/reckon_work.h"
#include "query/quantity/saybolt.h"
#include "query/trade/oil_blend.h"
#include "query/trade/oil_grade.h"

namespace sheaf {
namespace {

constexpr std::string_view labels_caution =
    "A label such as 10W on a damper oil is no scale: compare mm²/s at one temperature.";

const Unit& viscosity_unit() { return unit_named("mm²/s"); }
const Unit& celsius() { return unit_named("°C"); }

// Every point needs its temperature.
std::optional<ViscosityPoint> read_point(Given& given, std::string_view name) {
  const auto statement = given.statement_if(name, Dimension::kinematic_viscosity);
  if (!statement) return std::nullopt;
  const auto& figure = statement->figure();
  if (!figure.nominal || !statement->at || statement->at->unit->dimension != Dimension::temperature) {
    given.refuse(std::string(name) + " wants a viscosity and its temperature, 32 mm²/s at 40 °C");
    return std::nullopt;
  }
  Figure at;
  at.nominal = statement->at->value;
  at.unit = statement->at->unit;
  return ViscosityPoint{in_unit(at, celsius()).least, in_unit(figure, viscosity_unit()).least};
}

bool is_at(const ViscosityPoint& point, double temperature) {
  return std::abs(point.celsius - temperature) < 0.05;
}

// None or several: grades leave gaps, and some overlap.
std::string grade_words(const GradeVerdict& verdict) {
  std::string words;
  for (const auto& grade : verdict.grades) words += (words.empty() ? "" : " or ") + grade;
  if (!words.empty()) return words;
  if (verdict.below.empty()) return "of none, thinner than " + verdict.above;
  if (verdict.above.empty()) return "of none, thicker than " + verdict.below;
  return "of none, between " + verdict.below + " and " + verdict.above;
}

void add_grade(Work& work, const Libraries& libraries, std::string_view kind, std::string label,
               double viscosity, std::string source) {
  const auto rows = grade_rows(libraries, kind);
  if (!rows) {
    work.of(rows);
    return;
  }
  const auto verdict = work.of(grade_of(viscosity, *rows));
  if (work.failed()) return;
  work.words(std::move(label), grade_words(verdict));
  work.table(std::move(source));
}

void add_index(Work& work, const OpenTables& open, double at_40, double at_100) {
  const auto libraries = open();
  const auto rows = libraries ? index_rows(*libraries) : Result<std::vector<IndexRow>>(libraries.failure());
  if (!rows) return work.words("viscosity index", "not reckoned: " + rows.failure().message);
  const auto index = viscosity_index(at_40, at_100, *rows);
  if (!index) return work.words("viscosity index", "none: " + index.failure().message);
  work.words("viscosity index", std::to_string(index->index), std::string("procedure ") + index->procedure);
  work.formula("VI of the viscosities at 40 and 100 °C", "ASTM D2270-10 (ISO 2909), Table 1");
}

std::string extrapolated_words(bool beyond) { return beyond ? "beyond the two points: extrapolated" : ""; }

void work_viscosity(Given& given, const OpenTables& open, Work& work) {
  const auto first = read_point(given, "first"), second = read_point(given, "and");
  const auto asked = given.list("for", celsius());
  const auto density = given.amount_if("density", unit_named("kg/m³"));
  if (work.failed()) return;
  auto line = ViscosityLine::through(*first, *second);
  if (!line) {
    work.of(Result<int>(line.failure()));
    return;
  }
  ViscosityPicture picture{*line, *first, *second, {}};
  for (const Figure& figure : asked) {
    const double temperature = in_unit(figure, celsius()).least;
    const auto value = work.of(line->viscosity_at(temperature));
    work.figure("at " + shown(figure), value.value, viscosity_unit(), {},
                extrapolated_words(value.extrapolated));
    if (density)
      work.figure("", work.of(dynamic_viscosity(value.value, *density)), unit_named("mPa·s"), {}, "dynamic");
    picture.asked.push_back({temperature, value.value});
  }
  const auto at_40 = line->viscosity_at(40), at_100 = line->viscosity_at(100);
  if (at_40 && at_100) {
    const bool printed =
        (is_at(*first, 40) || is_at(*second, 40)) && (is_at(*first, 100) || is_at(*second, 100));
    if (!printed) {
      work.figure("at 40 °C", at_40->value, viscosity_unit(), {}, extrapolated_words(at_40->extrapolated));
      work.figure("at 100 °C", at_100->value, viscosity_unit(), {}, extrapolated_words(at_100->extrapolated));
    }
    add_index(work, open, at_40->value, at_100->value);
  }
  work.formula("log log Z = A − B · log T, Z = ν + 0.7 + exp(−1.47 − 1.84 ν − 0.51 ν²)",
               "ASTM D341-09; constants of the exponential from memory");
  work.caution("No formula knows the pour point: below it the oil does not flow.");
  if (!work.failed()) work.picture(viscosity_picture(picture));
}

void add_comparison(Work& work, const ViscosityPoint& first, const ViscosityPoint& second) {
  const auto compared = work.of(compare_viscosity(first.mm2_s, second.mm2_s));
  if (work.failed()) return;
  const double per_cent = compared.per_cent;
  work.words("the second",
             said(std::abs(per_cent), unit_named("%"), 2) + (per_cent < 0 ? " thinner" : " thicker"),
             "at the same temperature");
}

void work_grade(Given& given, const OpenTables& open, Work& work) {
  const auto point = read_point(given, "oil"), other = read_point(given, "against");
  if (work.failed()) return;
  if (other && !is_at(*other, point->celsius))
    return given.refuse(
        "only viscosities at one temperature compare; sheaf reckon viscosity brings them there");
  const auto libraries = work.of(open());
  if (work.failed()) return;
  if (is_at(*point, 40)) {
    add_grade(work, libraries, "viscosity-grade", "by its viscosity at 40 °C", point->mm2_s,
              "ISO viscosity grades at 40 °C, ISO 3448");
  } else if (is_at(*point, 100)) {
    add_grade(work, libraries, "engine-oil-grade", "engine oil", point->mm2_s,
              "engine oil grades at 100 °C, SAE J300");
    add_grade(work, libraries, "gear-oil-grade", "gear oil", point->mm2_s,
              "gear oil grades at 100 °C, SAE J306");
  } else if (!other) {
    return given.refuse("grades are stated at 40 °C (ISO VG) and 100 °C (engine and gear oils)");
  }
  const double seconds =
      point->mm2_s >= least_saybolt_viscosity ? saybolt_seconds(point->mm2_s, point->celsius) : 0;
  if (seconds > 0) {
    work.figure("Saybolt", seconds, unit_named("SUS"), {}, "at the same temperature");
    work.formula("Saybolt Universal seconds of a kinematic viscosity", "ASTM D2161, equation 1, from memory");
  }
  if (other) add_comparison(work, *point, *other);
  work.caution(labels_caution);
}

void work_blend(Given& given, const OpenTables&, Work& work) {
  const auto first = read_point(given, "first"), second = read_point(given, "and");
  const auto target = given.amount_if("target", viscosity_unit());
  const auto share = given.amount_if("share", unit_named("%"));
  if (work.failed()) return;
  if (!is_at(*second, first->celsius)) return given.refuse("both oils must be measured at one temperature");
  if (bool(target) == bool(share))
    return given.refuse("either the target or the share of the second oil is needed");
  if (target) {
    const double part = work.of(blend_share(first->mm2_s, second->mm2_s, *target));
    work.figure("first oil", (1 - part) * 100, unit_named("%"), {}, "by volume", 2);
    work.figure("second oil", part * 100, unit_named("%"), {}, "by volume", 2);
  } else {
    const double mixed = work.of(blend_viscosity(first->mm2_s, second->mm2_s, *share / 100));
    work.figure("the mixture", mixed, viscosity_unit(), {}, "at the same temperature", 2);
  }
  work.formula("log log (ν + 0.7) of the blend is linear in the shares by volume", "ASTM D7152, procedure A");
  work.caution("Whether two oils may be mixed at all, no formula says.");
}

constexpr std::array<GivenName, 4> viscosity_names = {{{"first", "32 mm²/s at 40 °C", true},
                                                       {"and", "6.1 mm²/s at 100 °C", true},
                                                       {"for", "the temperatures wanted, 0 °C, 20 °C"},
                                                       {"density", "for the dynamic viscosity, 870 kg/m³"}}};
constexpr std::array<GivenName, 2> grade_names = {
    {{"oil", "32 mm²/s at 40 °C", true}, {"against", "another oil at the same temperature"}}};
constexpr std::array<GivenName, 4> blend_names = {{{"first", "15 mm²/s at 40 °C", true},
                                                   {"and", "46 mm²/s at 40 °C", true},
                                                   {"target", "the viscosity wanted, 32 mm²/s"},
                                                   {"share", "or the share of the second oil, 30 %"}}};

const std::array<TopicEntry, 3> topics = {
    {{{"viscosity", "Viscosity of an oil at any temperature, and its index", viscosity_names,
       "viscosity 32 mm²/s at 40 °C and 6.1 mm²/s at 100 °C for 0 °C"},
      work_viscosity},
     {{"grade", "The grade an oil falls in, and how two oils compare", grade_names,
       "grade 32 mm²/s at 40 °C against 26 mm²/s at 40 °C"},
      work_grade},
     {{"blend", "What a mixture of two oils has, or how to mix them", blend_names,
       "blend 15 mm²/s at 40 °C and 46 mm²/s at 40 °C target 32 mm²/s"},
      work_blend}}};

}  // namespace

std::span<const TopicEntry> oil_topics() { return topics; }

}  // namespace sheaf
