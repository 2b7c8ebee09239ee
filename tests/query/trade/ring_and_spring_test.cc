// SPDX-License-Identifier: GPL-2.0-or-later
#include <doctest/doctest.h>

#include <cmath>

#include "query/trade/o_ring.h"
#include "query/trade/spring.h"
#include "tests/outside/table.h"

using namespace sheaf;

TEST_CASE("spring rates agree with handbook examples") {
  for (const auto& row : outside::csv("springs.csv")) {
    CAPTURE(outside::text(row, "source"));
    const bool inches = outside::text(row, "units") == "lbf in";
    const double length = inches ? 25.4 : 1, stress = inches ? 0.00689475729316836 : 1;  // psi to MPa
    const double rate_unit = inches ? 0.17512683524647638 : 1;                           // lbf/in to N/mm
    const CoilSpring spring{outside::number(row, "wire") * length,
                            outside::number(row, "mean_diameter") * length,
                            outside::number(row, "active_coils")};
    const auto rate = spring_rate(spring, outside::number(row, "modulus") * stress);
    REQUIRE(rate);
    CHECK(*rate / rate_unit ==
          doctest::Approx(outside::number(row, "rate")).epsilon(outside::number(row, "within")));
  }
}

TEST_CASE("springs stack, stand side by side, and are preloaded") {
  CHECK(*series_rate(8.5, 9) == doctest::Approx(4.3714).epsilon(1e-4));
  CHECK(*parallel_rate(8.5, 9) == doctest::Approx(17.5));
  CHECK(*spring_force(8.5, 15) == doctest::Approx(127.5));
  CHECK(*shortening_for(8.5, 127.5) == doctest::Approx(15));
  CHECK(mean_from_outside(24.75, 2.5) == doctest::Approx(22.25));
  CHECK(mean_from_inside(19.75, 2.5) == doctest::Approx(22.25));
  CHECK(spring_index({2.5, 22.25, 16}) == doctest::Approx(8.9));
  CHECK(solid_length(4.5, 38) == doctest::Approx(171));
  const auto band = spring_rate(CoilSpring{4.5, 32, 36}, Band{78500, 81500});
  REQUIRE(band);
  CHECK(band->most / band->least == doctest::Approx(81500.0 / 78500));
}

TEST_CASE("springs that cannot be are refused") {
  CHECK_FALSE(spring_rate(CoilSpring{0, 32, 36}, 79300));
  CHECK_FALSE(spring_rate(CoilSpring{4.5, 4.5, 36}, 79300));
  CHECK_FALSE(spring_rate(CoilSpring{4.5, 32, 0}, 79300));
  CHECK_FALSE(spring_rate(CoilSpring{4.5, 32, 36}, 79.3));
  CHECK_FALSE(spring_rate(CoilSpring{4.5, 32, 36}, Band{81500, 78500}));
  CHECK_FALSE(series_rate(0, 9));
  CHECK_FALSE(spring_force(8.5, -1));
  CHECK_FALSE(shortening_for(8.5, std::nan("")));
}

TEST_CASE("the gland of an O-ring -214 is as reckoned by hand") {
  // 0.984 x 0.139 in ring, groove 0.113 deep, 0.190 wide, on 1.000 in: own arithmetic.
  const auto gland = reckon_gland({0.984, 0.139}, {0.113, 0.190, 1.000});
  REQUIRE(gland);
  CHECK(gland->squeeze == doctest::Approx(0.1871).epsilon(1e-3));
  CHECK(gland->fill == doctest::Approx(0.7068).epsilon(1e-3));
  CHECK(gland->stretch == doctest::Approx(0.01626).epsilon(1e-3));
  CHECK(1 - gland->section / 0.139 == doctest::Approx(0.00803).epsilon(2e-3));
}

TEST_CASE("printed gland depths give the squeeze printed beside them") {
  // Public gland design tables, reciprocating seals: section 0.139 ± 0.004 in, depth 0.119 to 0.123 in: 9 to
  // 17 %.
  const auto squeeze = squeeze_band({0.135, 0.143}, {0.119, 0.123});
  REQUIRE(squeeze);
  CHECK(squeeze->least == doctest::Approx(0.09).epsilon(0.06));
  CHECK(squeeze->most == doctest::Approx(0.17).epsilon(0.06));
}

TEST_CASE("a ring that is loose or crushed is refused or said to be") {
  CHECK(reckon_gland({25, 3.5}, {2.8, 4.7, 24})->stretch < 0);
  CHECK(reckon_gland({25, 3.5}, {2.8, 4.7, 0})->stretch == 0);
  CHECK_FALSE(reckon_gland({25, 3.5}, {3.6, 4.7, 25}));
  CHECK_FALSE(reckon_gland({25, 3.5}, {0, 4.7, 25}));
  CHECK_FALSE(reckon_gland({25, 0}, {2.8, 4.7, 25}));
  CHECK_FALSE(squeeze_band({3.5, 3.4}, {2.8, 2.9}));
}
