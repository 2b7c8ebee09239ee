// SPDX-License-Identifier: GPL-2.0-or-later
// No published worked examples were found for these: the values are geometry, checked by hand.
#include "query/trade/oil_volume.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace sheaf;

TEST_CASE("a height of oil has a volume, and back") {
  CHECK(*volume_of_height(37, 0, 10) == doctest::Approx(10.752).epsilon(1e-4));
  CHECK(*volume_of_height(43, 25, 130) == doctest::Approx(124.973).epsilon(1e-5));
  CHECK(*height_of_volume(39, 12, 25) == doctest::Approx(23.116).epsilon(1e-4));
  CHECK(*volume_per_mm(38, 0) == doctest::Approx(1.134).epsilon(1e-3));
  CHECK(*height_of_volume(43, 25, *volume_of_height(43, 25, 77)) == doctest::Approx(77));
}

TEST_CASE("more oil stands higher, which is a smaller level") {
  CHECK(*level_below_rim({43, 500, 0}, 600) == doctest::Approx(86.83).epsilon(1e-4));
  CHECK(*level_below_rim({43, 500, *rod_volume(12, 120)}, 600) == doctest::Approx(77.49).epsilon(1e-4));
  CHECK(*level_below_rim({43, 500, 0}, 610) < *level_below_rim({43, 500, 0}, 600));
  const OilTube tube{37.4, 480, 12};
  CHECK(*volume_at_level(tube, *level_below_rim(tube, 400)) == doctest::Approx(400));
}

TEST_CASE("a spring in the oil takes up the volume of its wire") {
  // 36 coils of 4.5 mm wire on a mean diameter of 32 mm: 3.619 m of wire of 15.904 mm².
  CHECK(*spring_wire_volume(4.5, 32, 36) == doctest::Approx(57.56).epsilon(1e-3));
}

TEST_CASE("oil takes more room when hot") {
  CHECK(*volume_at_temperature(600, 20, 60, 0.00065) == doctest::Approx(615.6));
  CHECK(*volume_at_temperature(3500, 20, 90, 0.00065) == doctest::Approx(3659.25));
  CHECK_FALSE(volume_at_temperature(600, 20, 60, 0));
  CHECK_FALSE(volume_at_temperature(600, 20, 300, 0.0007));
}

TEST_CASE("the air over the oil stiffens with the stroke") {
  CHECK(*air_spring_pressure(101.325, 140, 100, 1) == doctest::Approx(354.64).epsilon(1e-4));
  CHECK(*air_spring_pressure(101.325, 140, 100, 1.4) == doctest::Approx(585.34).epsilon(1e-4));
  CHECK_FALSE(air_spring_pressure(101.325, 140, 140, 1));
}

TEST_CASE("a tube that runs over or holds nothing is refused") {
  CHECK_FALSE(level_below_rim({43, 500, 0}, 800));
  CHECK_FALSE(volume_at_level({43, 500, 700}, 100));
  CHECK_FALSE(volume_at_level({43, 500, 0}, 501));
  CHECK_FALSE(volume_of_height(43, 43, 10));
  CHECK_FALSE(volume_of_height(0, 0, 10));
  CHECK_FALSE(height_of_volume(43, 0, std::nan("")));
}

TEST_CASE("bottles leave as little over as can be, then are as few as can be") {
  const double sizes[] = {1000, 500, 250};
  CHECK(bottles_for(1024, sizes)->counts == std::vector<int>{1, 0, 1});
  CHECK(bottles_for(1000, sizes)->counts == std::vector<int>{1, 0, 0});
  CHECK(bottles_for(1000, sizes)->left_over_ml == 0);
  CHECK(bottles_for(1, sizes)->counts == std::vector<int>{0, 0, 1});
  const double us[] = {946.35, 473.18};
  const auto bought = bottles_for(1040, us);
  REQUIRE(bought);
  CHECK(bought->bought_ml == doctest::Approx(1419.53));
  CHECK(bought->left_over_ml == doctest::Approx(379.53));
  CHECK_FALSE(bottles_for(0, sizes));
  CHECK_FALSE(bottles_for(1000, {}));
  const double none[] = {0.0};
  CHECK_FALSE(bottles_for(1000, none));
  CHECK_FALSE(bottles_for(1e9, sizes));
}

TEST_CASE("no other purchase of bottles is better, by trying them all") {
  std::mt19937 random(7);
  for (int round = 0; round < 200; ++round) {
    const double sizes[] = {100.0 + static_cast<double>(random() % 500),
                            50.0 + static_cast<double>(random() % 300)};
    const double needed = 1 + static_cast<double>(random() % 2000);
    const auto bought = bottles_for(needed, sizes);
    REQUIRE(bought);
    CHECK(bought->bought_ml >= needed);
    for (int a = 0; a < 25; ++a) {
      for (int b = 0; b < 45; ++b) {
        const double other = a * sizes[0] + b * sizes[1];
        if (other < needed) continue;
        CHECK(other >= bought->bought_ml);
        if (other == bought->bought_ml) CHECK(a + b >= bought->counts[0] + bought->counts[1]);
      }
    }
  }
}
