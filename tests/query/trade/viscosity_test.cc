// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/viscosity.h"

#include <doctest/doctest.h>

#include <cmath>

#include "query/trade/oil_blend.h"
#include "query/trade/oil_grade.h"
#include "query/trade/viscosity_index.h"
#include "tests/outside/table.h"

using namespace sheaf;

namespace {

std::vector<IndexRow> index_table() {
  std::vector<IndexRow> rows;
  for (const auto& row : outside::sheet("viscosity-index")) {
    rows.push_back(
        {outside::number(row, "viscosity-100"), outside::number(row, "l"), outside::number(row, "h")});
  }
  return rows;
}

ViscosityLine line(double v40, double v100) { return *ViscosityLine::through({40, v40}, {100, v100}); }

}  // namespace

TEST_CASE("the line through 32 and 5.4 mm²/s has the published constants") {
  // A published ASTM D341 worked example prints A 9.5259 and B 3.7449 with 273 for 273.15, which moves the
  // fourth digit; with 273.15 the formula gives 9.53082 and 3.74658 (own arithmetic).
  const ViscosityLine oil = line(32, 5.4);
  CHECK(oil.a() == doctest::Approx(9.5259).epsilon(0.001));
  CHECK(oil.b() == doctest::Approx(3.7449).epsilon(0.001));
  CHECK(oil.a() == doctest::Approx(9.53082).epsilon(1e-5));
  CHECK(oil.b() == doctest::Approx(3.74658).epsilon(1e-5));
}

TEST_CASE("viscosity at other temperatures follows the formula") {
  // Own arithmetic by the formula's short form, so these check the code and not the world.
  struct {
    double v40, v100, celsius, expected;
  } cases[] = {{32, 5.4, -20, 2291},   {32, 5.4, 0, 336},    {32, 5.4, 60, 15.19},
               {32, 5.4, 80, 8.533},   {46, 6.8, 60, 20.62}, {46, 6.8, -20, 4518},
               {100, 11.4, 80, 19.89}, {15, 3.9, 60, 8.651}, {15, 3.9, 80, 5.578}};
  for (const auto& one : cases) {
    CAPTURE(one.celsius);
    const auto at = line(one.v40, one.v100).viscosity_at(one.celsius);
    REQUIRE(at);
    CHECK(at->value == doctest::Approx(one.expected).epsilon(0.0006));
    CHECK(at->extrapolated == (one.celsius < 40 || one.celsius > 100));
    CHECK(line(one.v40, one.v100).temperature_of(at->value)->value ==
          doctest::Approx(one.celsius).epsilon(0.001));
  }
}

TEST_CASE("the two points themselves come back, also where oils are thin") {
  for (double v100 : {0.8, 1.5, 2.0, 5.4, 40.0}) {
    const ViscosityLine oil = line(v100 * 4, v100);
    CHECK(oil.viscosity_at(100)->value == doctest::Approx(v100).epsilon(0.002));
    CHECK(oil.viscosity_at(40)->value == doctest::Approx(v100 * 4).epsilon(0.002));
  }
}

TEST_CASE("viscosity is refused where the formula does not hold") {
  CHECK_FALSE(ViscosityLine::through({40, 32}, {42, 30}));
  CHECK_FALSE(ViscosityLine::through({40, 5}, {100, 32}));
  CHECK_FALSE(ViscosityLine::through({40, 32}, {100, 0.1}));
  CHECK_FALSE(ViscosityLine::through({-80, 3200}, {100, 5}));
  CHECK_FALSE(ViscosityLine::through({40, std::nan("")}, {100, 5}));
  CHECK_FALSE(line(32, 5.4).viscosity_at(-71));
  CHECK_FALSE(line(32, 5.4).viscosity_at(371));
  CHECK_FALSE(line(1000, 3).viscosity_at(-60));
  CHECK_FALSE(line(32, 5.4).temperature_of(0.1));
  CHECK(ViscosityLine::through({100, 5.4}, {40, 32})->a() == doctest::Approx(line(32, 5.4).a()));
  CHECK(*dynamic_viscosity(32, 870) == doctest::Approx(27.84));
  CHECK_FALSE(dynamic_viscosity(32, 0));
}

TEST_CASE("the viscosity index agrees with the standard's worked examples") {
  const auto table = index_table();
  for (const auto& row : outside::csv("viscosity_index.csv")) {
    CAPTURE(outside::text(row, "source"));
    const auto index =
        viscosity_index(outside::number(row, "viscosity_40"), outside::number(row, "viscosity_100"), table);
    REQUIRE(index);
    CHECK(index->index == static_cast<int>(outside::number(row, "index")));
    if (outside::has(row, "l")) CHECK(index->l == doctest::Approx(outside::number(row, "l")).epsilon(0.0001));
    if (outside::has(row, "h")) CHECK(index->h == doctest::Approx(outside::number(row, "h")).epsilon(0.0003));
  }
  // By Table 1, own calculation; no printed value.
  CHECK(viscosity_index(32, 5.4, table)->raw == doctest::Approx(102.2).epsilon(0.001));
  CHECK(viscosity_index(68, 8.7, table)->raw == doctest::Approx(99.3).epsilon(0.001));
  CHECK(viscosity_index(26.5, 8.2, table)->raw == doctest::Approx(314.0).epsilon(0.001));
  CHECK(viscosity_index(22.83, 5.05, table)->procedure == 'B');
  CHECK(viscosity_index(73.3, 8.86, table)->procedure == 'A');
}

TEST_CASE("above 70 mm²/s the standard's equations take over, and the table meets them") {
  const auto table = index_table();
  CHECK(viscosity_index(2000, 100, {})->l == doctest::Approx(9604));  // 0.8353 · 100² + 14.67 · 100 − 216
  const auto at_end = viscosity_index(1500, 70, table);
  const auto after = viscosity_index(1500, 70.01, table);
  REQUIRE(at_end);
  REQUIRE(after);
  CHECK(at_end->l == doctest::Approx(after->l).epsilon(0.002));
  CHECK(at_end->h == doctest::Approx(after->h).epsilon(0.002));
}

TEST_CASE("the table's L and H grow without a jump, so no row is mistyped") {
  const auto table = index_table();
  REQUIRE(table.size() >= 300);
  for (std::size_t i = 2; i < table.size(); ++i) {
    CAPTURE(table[i].viscosity_100);
    const double step = table[i].viscosity_100 - table[i - 1].viscosity_100;
    const double before = table[i - 1].viscosity_100 - table[i - 2].viscosity_100;
    REQUIRE(step > 0);
    const double slope_l = (table[i].l - table[i - 1].l) / step,
                 slope_before = (table[i - 1].l - table[i - 2].l) / before;
    const double slope_h = (table[i].h - table[i - 1].h) / step,
                 slope_h_before = (table[i - 1].h - table[i - 2].h) / before;
    CHECK(slope_l == doctest::Approx(slope_before).epsilon(0.30));
    CHECK(slope_h == doctest::Approx(slope_h_before).epsilon(0.30));
    CHECK(table[i].l > table[i].h);
  }
}

TEST_CASE("the index is not defined for thin oils, and never guessed beyond the table") {
  const auto table = index_table();
  CHECK_FALSE(viscosity_index(5, 1.9, table));
  CHECK_FALSE(viscosity_index(5, 5.1, table));
  CHECK_FALSE(viscosity_index(32, 5.4, {}));
  CHECK_FALSE(viscosity_index(std::nan(""), 5.4, table));
}

TEST_CASE("two oils blend, and a target comes back as a share") {
  // Own arithmetic by the two published equations.
  CHECK(*blend_viscosity(5, 20, 0.4, BlendRule::refutas_mass) == doctest::Approx(8.1085).epsilon(1e-4));
  CHECK(*blend_viscosity(15, 46, 0.5, BlendRule::refutas_mass) == doctest::Approx(25.198).epsilon(1e-4));
  CHECK(*blend_share(32, 100, 46) == doctest::Approx(0.3481).epsilon(2e-4));
  CHECK(*blend_share(22, 68, 46, BlendRule::refutas_mass) == doctest::Approx(0.6843).epsilon(2e-4));
  CHECK(*blend_share(10, 100, 32) == doctest::Approx(0.5801).epsilon(2e-4));
  for (double share : {0.0, 0.25, 0.5, 1.0}) {
    CHECK(*blend_share(15, 46, *blend_viscosity(15, 46, share)) == doctest::Approx(share).epsilon(1e-6));
  }
  CHECK(*blend_viscosity(15, 46, 0) == doctest::Approx(15));
  CHECK(*blend_viscosity(15, 46, 1) == doctest::Approx(46));
  CHECK_FALSE(blend_share(15, 46, 100));
  CHECK_FALSE(blend_share(15, 15, 15));
  CHECK_FALSE(blend_viscosity(15, 46, 1.1));
  CHECK_FALSE(blend_viscosity(1, 46, 0.5));
}

TEST_CASE("an index of the published Refutas example recomputes") {
  // Maples prints 12.492 for 2.234 mm²/s; the equation gives 12.4902. At a share of 0 the blend is the oil
  // itself, so the index is only seen through a blend's share.
  const double index = 14.534 * std::log(std::log(2.234 + 0.8)) + 10.975;
  CHECK(index == doctest::Approx(12.492).epsilon(0.0002));
}

TEST_CASE("a viscosity falls in a grade, in several, or between two") {
  const std::vector<GradeRow> iso = {iso_grade("VG 22", 22), iso_grade("VG 32", 32), iso_grade("VG 46", 46)};
  CHECK(grade_of(32, iso)->grades == std::vector<std::string>{"VG 32"});
  CHECK(grade_of(35.2, iso)->grades == std::vector<std::string>{"VG 32"});
  CHECK(grade_of(26, iso)->grades.empty());
  CHECK(grade_of(26, iso)->below == "VG 22");
  CHECK(grade_of(26, iso)->above == "VG 32");
  const std::vector<GradeRow> sae = {{"16", 6.1, 8.2, true}, {"20", 6.9, 9.3, true}, {"30", 9.3, 12.5, true}};
  CHECK(grade_of(7, sae)->grades == std::vector<std::string>{"16", "20"});
  CHECK(grade_of(9.3, sae)->grades == std::vector<std::string>{"30"});
  CHECK(grade_of(12.5, sae)->grades.empty());
  CHECK_FALSE(grade_of(0, iso));
  CHECK(compare_viscosity(22, 33)->per_cent == doctest::Approx(50));
  CHECK_FALSE(compare_viscosity(0, 33));
}
