// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/link/variants.h"

#include <doctest/doctest.h>

#include "tests/compiler/linking.h"

using namespace sheafc;

namespace {

Fit fit(const char* years, const char* frames = "", const char* market = "") {
  Fit fit{.make = "Haldrek",
          .model = "Muleback 380",
          .years = {},
          .market = market,
          .frames = {},
          .note = {},
          .where = {}};
  if (*years) fit.years = *parse_years(years);
  if (*frames) fit.frames = *parse_frames(frames);
  return fit;
}

When when(const char* years, const char* frames = "", const char* market = "") {
  static int line = 0;
  When when{.years = {}, .frames = {}, .market = market, .where = {"try.yaml", ++line, 1, 1}};
  if (*years) when.years = *parse_years(years);
  if (*frames) when.frames = *parse_frames(frames);
  return when;
}

std::string faults(std::vector<Fit> fits, std::vector<When> variants) {
  Diagnostics sink;
  check_variants(fits, variants, sink);
  std::string text;
  for (const Diagnostic& fault : sink.all()) text += std::string(fault.rule) + " ";
  return text;
}

}  // namespace

TEST_CASE("years must be covered, each once") {
  CHECK(faults({fit("2011..2015")}, {when("2011..2012"), when("2013..2015")}) == "");
  CHECK(faults({fit("2011..")}, {when("..2012"), when("2013..")}) == "");
  CHECK(faults({fit("2011..2015")}, {when("2013..2015"), when("2011..2012")}) == "");
  CHECK(faults({fit("2011..2015")}, {when("2011..2012"), when("2014..2015")}) == "variant-gap ");
  CHECK(faults({fit("2011..")}, {when("2011..2012"), when("2013..2015")}) == "variant-gap ");
  CHECK(faults({fit("2011..2015")}, {when("2011..2013"), when("2013..2015")}) == "variant-overlap ");
}

TEST_CASE("every machine of the sheet must be covered") {
  CHECK(faults({fit("2011..2015"), fit("2009..2010")}, {when("2011..2012"), when("2013..2015")}) ==
        "variant-gap ");
  CHECK(faults({fit("2011..2015"), fit("2012..2013")}, {when("2011..2012"), when("2013..2015")}) == "");
}

TEST_CASE("a year may be split by frame numbers that follow one another") {
  const char* low = "..HK4-004999";
  const char* high = "HK4-005000..";
  CHECK(faults({fit("2013")}, {when("", low), when("", high)}) == "");
  CHECK(faults({fit("2011..2015")},
               {when("2011..2012"), when("2013", low), when("2013", high), when("2014..2015")}) == "");
  CHECK(faults({fit("2013")}, {when("", low)}) == "variant-gap ");
  CHECK(faults({fit("2013")}, {when("", high)}) == "variant-gap ");
  CHECK(faults({fit("2013")}, {when("", low), when("", "HK4-005001..")}) == "variant-gap ");
  CHECK(faults({fit("2013")}, {when("", low), when("", "HK4-004000..")}) == "variant-overlap ");
  CHECK(faults({fit("2013")}, {when("", low), when("")}) == "variant-overlap ");
}

TEST_CASE("a sheet's own frame numbers bound what must be covered") {
  CHECK(faults({fit("2013", "HK4-000100..HK4-009999")},
               {when("", "..HK4-004999"), when("", "HK4-005000..HK4-009999")}) == "");
  CHECK(faults({fit("2013", "HK4-000100..HK4-009999")},
               {when("", "HK4-000200..HK4-004999"), when("", "HK4-005000..")}) == "variant-gap ");
}

TEST_CASE("markets part machines too, but one market alone leaves the others out") {
  CHECK(faults({fit("2013")}, {when("", "", "north"), when("", "", "south")}) == "");
  CHECK(faults({fit("2013")}, {when("", "", "north")}) == "variant-gap ");
  CHECK(faults({fit("2013", "", "north")}, {when("", "", "north")}) == "");
  CHECK(faults({fit("2013")}, {when("", "", "north"), when("", "", "north")}) ==
        "variant-gap variant-overlap ");
}

TEST_CASE("without machines only overlaps can be seen") {
  CHECK(faults({}, {when("2011..2012"), when("2014..2015")}) == "");
  CHECK(faults({}, {when("2011..2013"), when("2013..2015")}) == "variant-overlap ");
}

TEST_CASE("a variant becomes an entry of its own, for its own machines") {
  const Linking linking(R"(sheet: wheel
fits: { make: Haldrek, model: Muleback 380, years: 2011.. }
fasteners:
  nut:
    name: axle nut
    state: greased
    variants:
      - { years: ..2015, torque: 64 N·m }
      - { years: 2016.., torque: 70 N·m, state: dry }
)");
  REQUIRE(linking.faults() == "none");
  const auto variants = variants_at(linking.linked, "wheel/nut");
  REQUIRE(variants.size() == 2);
  CHECK(variants[0]->variant == "..2015");
  CHECK(variants[0]->text("torque") == "64 N·m");
  CHECK(variants[0]->text("state") == "greased");
  CHECK(variants[0]->fits.at(0).years == Years{2011, 2015});
  CHECK(variants[1]->text("state") == "dry");
  CHECK(variants[1]->fits.at(0).years == Years{2016, 0});
  CHECK_FALSE(variants[0]->has("variants"));
}

TEST_CASE("of a base's variants those hold that meet the machines of the sheet") {
  const Linking linking(R"(sheet: late
based-on: early
fits: { make: Haldrek, model: Muleback 450, years: 2016.. }
# file: early.yaml
sheet: early
fits: { make: Haldrek, model: Muleback 380, years: 2011.. }
fasteners:
  nut:
    name: axle nut
    variants:
      - { years: ..2015, torque: 64 N·m }
      - { years: 2016.., torque: 70 N·m }
)");
  REQUIRE(linking.faults() == "none");
  const auto variants = variants_at(linking.linked, "late/nut");
  REQUIRE(variants.size() == 1);
  CHECK(variants[0]->text("torque") == "70 N·m");
}

TEST_CASE("a required key may stand on the variants") {
  CHECK(Linking("settings:\n  preload:\n    name: preload\n    count-from: fully out\n    variants:\n      - "
                "{ years: ..2012, standard: 4 turns }\n"
                "      - { years: 2013.., standard: 5 turns }\n")
            .faults() == "none");
  CHECK(Linking("settings:\n  preload:\n    name: preload\n    count-from: fully out\n    variants:\n      - "
                "{ years: ..2012, standard: 4 turns }\n"
                "      - { years: 2013.., range: 0..9 turns }\n")
            .faults() == "7:9 missing-key");
}
