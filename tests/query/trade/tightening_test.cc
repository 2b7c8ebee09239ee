// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/tightening.h"

#include <doctest/doctest.h>

#include "query/trade/strength.h"
#include "tests/outside/table.h"

using namespace sheaf;

namespace {

constexpr double n_per_lbf = 4.4482216152605;  // exact: 0.45359237 kg · 9.80665 m/s²
constexpr double nm_per_lbf_in = 0.1129848290276167;
constexpr double mm_per_in = 25.4;

ThreadGeometry geometry(std::string_view text) {
  auto known = geometry_of(*parse_thread(text, Input::prompt));
  REQUIRE_MESSAGE(known, text);
  return *known;
}

PropertyClass class_of(std::string name, double proof) {
  return {std::move(name), 0, 100, proof, proof * 1.1, proof * 1.3};
}

}  // namespace

TEST_CASE("proof loads agree with the printed ones within 0.5 %") {
  int checked = 0;
  for (const auto& row : outside::csv("proof_loads.csv")) {
    CAPTURE(outside::text(row, "thread"));
    CAPTURE(outside::text(row, "class"));
    const auto area = outside::sheet("iso-metric-threads");
    const std::string bare = outside::text(row, "thread");
    std::string whole;
    for (const auto& known : area) {
      if (outside::text(known, "thread").starts_with(bare + "x") &&
          outside::text(known, "series") == "coarse") {
        whole = outside::text(known, "thread");
      }
    }
    REQUIRE_FALSE(whole.empty());
    const auto load = proof_load_n(geometry(whole), class_of("", outside::number(row, "proof_stress_mpa")));
    REQUIRE(load);
    CHECK(*load == doctest::Approx(outside::number(row, "load")).epsilon(0.005));
    ++checked;
  }
  CHECK(checked == 92);
}

TEST_CASE("torque by nut factor agrees with handbook examples") {
  for (const auto& row : outside::csv("tightening.csv")) {
    CAPTURE(outside::text(row, "source"));
    const auto torque =
        torque_by_nut_factor(outside::number(row, "preload") * n_per_lbf, outside::number(row, "nut_factor"),
                             outside::number(row, "diameter") * mm_per_in);
    REQUIRE(torque);
    CHECK(*torque / nm_per_lbf_in == doctest::Approx(outside::number(row, "torque")).epsilon(0.0015));
    const auto back = preload_by_nut_factor(*torque, outside::number(row, "nut_factor"),
                                            outside::number(row, "diameter") * mm_per_in);
    REQUIRE(back);
    CHECK(*back / n_per_lbf == doctest::Approx(outside::number(row, "preload")));
  }
}

TEST_CASE("the long form agrees with the handbook's 3551 lbf·in for 3/4-16 at 0.15 and 25 kip") {
  // Shigley, Mechanical Engineering Design 9th ed., Example 8-3 (c); the answer is from memory.
  const ThreadGeometry screw = geometry("3/4-16 UNF");
  const auto torque = torque_long_form(25000 * n_per_lbf, screw, {0.15, 0.15}, mean_head_diameter(screw));
  REQUIRE(torque);
  CHECK(*torque / nm_per_lbf_in == doctest::Approx(3551).epsilon(0.0005));
  CHECK(*preload_long_form(*torque, screw, {0.15, 0.15}, mean_head_diameter(screw)) ==
        doctest::Approx(25000 * n_per_lbf));
}

TEST_CASE("assembly torques agree with a publisher's table within 2.5 %") {
  for (const auto& row : outside::csv("assembly_torques.csv")) {
    CAPTURE(outside::text(row, "thread"));
    CAPTURE(outside::text(row, "class"));
    const ThreadGeometry screw = geometry(outside::text(row, "thread"));
    const double friction = outside::number(row, "friction");
    const auto preload =
        assembly_preload_n(screw, outside::number(row, "yield_mpa"), outside::number(row, "share"), friction);
    REQUIRE(preload);
    const auto torque = torque_long_form(
        *preload, screw, {friction, friction},
        mean_head_diameter(outside::number(row, "face_mm"), outside::number(row, "hole_mm")));
    REQUIRE(torque);
    CHECK(*torque == doctest::Approx(outside::number(row, "torque")).epsilon(0.025));
  }
}

TEST_CASE("a government table of torques never overstrains its bolts in our reckoning") {
  // FAA AC 43.13-1B Table 7-1. Its columns name the tension in the bolt at the torque; the largest stress is
  // 90 000 psi of bolts that bear far more. By a published range of nut factors for such threads (0.09 to
  // 0.30, see the nut factor sheet) the ratio to a load of that stress must stay below what a rule calls
  // impossible, 0.28, and above nothing at all.
  for (const auto& row : outside::csv("torque_table_7_1.csv")) {
    CAPTURE(outside::text(row, "thread"));
    CAPTURE(outside::text(row, "column"));
    const ThreadGeometry bolt = geometry(outside::text(row, "thread"));
    const double stress =
        outside::text(row, "column").find("tension nut, 90000") != std::string::npos ? 90000 : 40000;
    if (outside::text(row, "column").starts_with("shear")) continue;      // thin nuts: the nut sets the limit
    const double load = bolt.stress_area * stress * 0.00689475729316836;  // psi to MPa
    const auto ratio =
        torque_to_proof_ratio(outside::number(row, "high") * nm_per_lbf_in, bolt.diameter, load);
    REQUIRE(ratio);
    CHECK(*ratio > 0.05);
    CHECK(*ratio < 0.28);
  }
}

TEST_CASE("a range of friction gives a band of preload, the most from the most slippery thread") {
  const auto band = preload_band({20, 25}, Band{0.12, 0.20}, 8);
  REQUIRE(band);
  CHECK(band->least == doctest::Approx(20e3 / (0.20 * 8)));
  CHECK(band->most == doctest::Approx(25e3 / (0.12 * 8)));
  const auto torques = torque_band({band->least, band->least}, {0.20, 0.20}, 8);
  REQUIRE(torques);
  CHECK(torques->most == doctest::Approx(20));
  const ThreadGeometry m8 = geometry("M8x1.25");
  const auto long_band = preload_band({20, 25}, m8, {0.08, 0.08}, {0.16, 0.16}, mean_head_diameter(m8));
  REQUIRE(long_band);
  CHECK(long_band->least < long_band->most);
  CHECK(long_band->least ==
        doctest::Approx(*preload_long_form(20, m8, {0.16, 0.16}, mean_head_diameter(m8))));
}

TEST_CASE("an angle follows from stiffness") {
  CHECK(*tightening_angle(30000, 1.5, 400000, 1200000) ==
        doctest::Approx(24));  // own numbers: checks the arithmetic alone
}

TEST_CASE("arguments outside the formulas' ranges are refused") {
  CHECK_FALSE(torque_by_nut_factor(-1, 0.2, 8));
  CHECK_FALSE(torque_by_nut_factor(1000, 0, 8));
  CHECK_FALSE(torque_by_nut_factor(1000, 2, 8));
  CHECK_FALSE(preload_by_nut_factor(20, 0.2, 0));
  CHECK_FALSE(preload_band({25, 20}, Band{0.12, 0.20}, 8));
  CHECK_FALSE(preload_band({20, 25}, Band{0.20, 0.12}, 8));
  const ThreadGeometry m8 = geometry("M8x1.25");
  CHECK_FALSE(torque_long_form(1000, m8, {0, 0.1}, 12));
  CHECK_FALSE(torque_long_form(1000, m8, {0.1, 0.1}, 2));
  CHECK_FALSE(assembly_preload_n(m8, 640, 2, 0.1));
  CHECK_FALSE(tightening_angle(1000, 1, 0, 1));
  CHECK_FALSE(torque_to_proof_ratio(20, 8, 0));
}

TEST_CASE("class names read in their spellings, and only the tables say which exist") {
  CHECK(class_name("8.8") == "8.8");
  CHECK(class_name("class 10.9") == "10.9");
  CHECK(class_name("A2-70") == "A2-70");
  CHECK(class_name("a4 80") == "A4-80");
  CHECK(class_name("grade 8") == "SAE 8");
  CHECK(class_name("SAE 5") == "SAE 5");
  CHECK(class_name("gr.8.2") == "SAE 8.2");
  CHECK(class_name("10.8") == "10.8");
  for (std::string_view text : {"", "8", "88", "M8", "0.8", "8.8.8", "10.95", "class", "28 N·m"}) {
    CAPTURE(text);
    CHECK(class_name(text).empty());
  }
  CHECK(nominal_strength("8.8")->tensile == 800);
  CHECK(nominal_strength("8.8")->yield == 640);
  CHECK(nominal_strength("12.9")->yield == 1080);
  CHECK_FALSE(nominal_strength("A2-70"));

  const std::vector<PropertyClass> rows = {
      {"8.8", 0, 16, 580, 640, 800}, {"8.8", 16, 100, 600, 660, 830}, {"A2-70", 0, 39, {}, 450, 700}};
  CHECK(*class_for("8.8", 16, rows)->proof == 580);
  CHECK(*class_for("8.8", 18, rows)->proof == 600);
  CHECK_FALSE(class_for("10.8", 8, rows));
  CHECK(class_for("10.8", 8, rows).failure().message ==
        "there is no property class 10.8; the tables have 8.8, A2-70");
  CHECK_FALSE(class_for("A2-70", 42, rows));
  CHECK_FALSE(proof_load_n(geometry("M8x1.25"), rows[2]));
  CHECK(*tensile_load_n(geometry("M8x1.25"), rows[2]) == doctest::Approx(36.6 * 700).epsilon(0.005));
}
