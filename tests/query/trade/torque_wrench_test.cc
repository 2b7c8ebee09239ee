// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/torque_wrench.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "tests/outside/table.h"

using namespace sheaf;
using Verdict = WrenchSetting::Verdict;

namespace {

const Unit* unit(std::string_view symbol) { return *unit_from(symbol, Dimension::torque); }
Number number(std::string_view text) { return *parse_number(text, Input::sheet); }

TorqueWrench wrench(std::string_view least, std::string_view most, std::string_view step,
                    std::string_view symbol, double accuracy = 4) {
  return {number(least), number(most), number(step), unit(symbol), accuracy};
}

TorqueTarget target(std::string_view figure, std::optional<double> tolerance = {}) {
  auto statement = parse_statement(figure, Dimension::torque, Input::sheet);
  REQUIRE_MESSAGE(statement, figure);
  auto wanted = torque_target(statement->figure(), tolerance);
  REQUIRE_MESSAGE(wanted, figure);
  return *wanted;
}

}  // namespace

TEST_CASE("adapter settings agree with government manuals") {
  for (const auto& row : outside::csv("adapters.csv")) {
    CAPTURE(outside::text(row, "source"));
    constexpr double mm_per_in = 25.4;
    const Adapter adapter{outside::number(row, "length") * mm_per_in,
                          outside::number(row, "adapter") * mm_per_in, outside::number(row, "degrees")};
    const auto setting = setting_with_adapter(outside::number(row, "torque"), adapter);
    REQUIRE(setting);
    CHECK(*setting == doctest::Approx(outside::number(row, "setting")).epsilon(0.0014));
    CHECK(*torque_with_adapter(*setting, adapter) == doctest::Approx(outside::number(row, "torque")));
  }
}

TEST_CASE("an adapter at a right angle changes nothing, and one that reaches the hand is impossible") {
  CHECK(*adapter_factor({400, 50, 90}) == doctest::Approx(1));
  CHECK(*adapter_factor({400, 50, -90}) == doctest::Approx(1));
  CHECK(*setting_with_adapter(100, {400, 50, 0}) == doctest::Approx(88.888889));
  CHECK(*setting_with_adapter(300, {254, 101.6, 45}) == doctest::Approx(233.856));
  CHECK(*setting_with_adapter(300, {254, 101.6, 180}) == doctest::Approx(500));
  CHECK_FALSE(adapter_factor({400, 400, 180}));
  CHECK_FALSE(adapter_factor({400, 500, 180}));
  CHECK_FALSE(adapter_factor({0, 50, 0}));
  CHECK_FALSE(adapter_factor({400, -1, 0}));
  CHECK_FALSE(adapter_factor({400, 50, 181}));
  CHECK_FALSE(adapter_factor({400, 50, std::nan("")}));
}

TEST_CASE("the wrench that holds the band with the best margin comes first") {
  const std::vector<TorqueWrench> crib = {
      wrench("20", "100", "1", "lbf·ft"), wrench("5", "25", "0.5", "N·m", 6),
      wrench("10", "60", "0.5", "N·m", 3), wrench("40", "200", "2", "N·m")};
  const auto settings = settings_for(target("35 ± 3 N·m"), crib);
  REQUIRE(settings);
  REQUIRE(settings->size() == 4);
  CHECK(settings->at(0).wrench == 2);
  CHECK(settings->at(0).verdict == Verdict::holds);
  CHECK(to_text(settings->at(0).setting) == "35.0");
  CHECK(settings->at(0).torque_nm.least == doctest::Approx(35 * 0.97));
  CHECK(settings->at(0).torque_nm.most == doctest::Approx(35 / 0.97));
  CHECK(settings->at(1).wrench == 0);
  CHECK(to_text(settings->at(1).setting) == "26");
  for (std::size_t i : {2U, 3U}) CHECK(settings->at(i).verdict == Verdict::out_of_range);
}

TEST_CASE("a wrench used below a fifth of its largest value is marked and comes after one that is not") {
  const std::vector<TorqueWrench> crib = {wrench("20", "400", "1", "N·m", 2),
                                          wrench("10", "60", "1", "N·m", 4)};
  const auto settings = settings_for(target("35 ± 3 N·m"), crib);
  REQUIRE(settings);
  CHECK(settings->at(0).wrench == 1);
  CHECK(settings->at(1).verdict == Verdict::holds);
  CHECK_FALSE(settings->at(1).dependable);
}

TEST_CASE("without a tolerance nothing is held, unless the shop has a default") {
  const std::vector<TorqueWrench> crib = {wrench("10", "60", "1", "N·m")};
  CHECK(settings_for(target("28 N·m"), crib)->at(0).verdict == Verdict::spreads);
  CHECK(settings_for(target("28 N·m", 5), crib)->at(0).verdict == Verdict::holds);
  CHECK(settings_for(target("28 N·m", 3), crib)->at(0).verdict == Verdict::leaves);
  CHECK(settings_for(target("28 ± 0.5 N·m"), crib)->at(0).verdict == Verdict::leaves);
  CHECK(*accuracy_needed({27.5, 28.5}) == doctest::Approx(1.77).epsilon(0.01));
}

TEST_CASE("a minimum and a maximum each have one end to keep") {
  const std::vector<TorqueWrench> crib = {wrench("10", "60", "1", "N·m")};
  const auto least = settings_for(target("min 20 N·m"), crib);
  CHECK(least->at(0).verdict == Verdict::holds);
  CHECK(to_text(least->at(0).setting) == "21");
  const auto most = settings_for(target("max 20 N·m"), crib);
  CHECK(most->at(0).verdict == Verdict::holds);
  CHECK(to_text(most->at(0).setting) == "19");
}

TEST_CASE("no setting that is said to hold can leave the band, for any torque within the accuracy") {
  std::mt19937 random(20260202);
  std::uniform_real_distribution<double> torque(3, 300), width(0.5, 30), accuracy(1, 10), share(0, 1),
      angle(-180, 180);
  const char* symbols[] = {"N·m", "lbf·ft", "lbf·in", "kgf·m"};
  const char* steps[] = {"0.1", "0.25", "0.5", "1", "2", "5"};
  int held = 0;
  for (int round = 0; round < 20000; ++round) {
    const double nominal = torque(random), tolerance = nominal * width(random) / 100;
    const TorqueTarget wanted{nominal, nominal - tolerance, nominal + tolerance};
    const auto random_index = random();
    const TorqueWrench tool =
        wrench("2", "3000", steps[random_index % 6], symbols[random_index / 6 % 4], accuracy(random));
    std::optional<Adapter> adapter;
    if (round % 2) adapter = Adapter{400, 60, angle(random)};
    const auto settings = settings_for(wanted, std::span(&tool, 1), adapter);
    REQUIRE(settings);
    const WrenchSetting& setting = settings->front();
    if (setting.verdict != Verdict::holds) continue;
    ++held;
    const double factor = adapter ? *adapter_factor(*adapter) : 1;
    const double middle = approximate(setting.setting) * static_cast<double>(tool.unit->factor.numerator) /
                          static_cast<double>(tool.unit->factor.denominator) * factor;
    const double a = tool.accuracy / 100;
    const double low = middle * (1 - a), high = middle / (1 - a);
    for (double real : {low, high, low + share(random) * (high - low), middle * (1 + a), middle / (1 + a)}) {
      CHECK(real >= *wanted.least * (1 - 1e-12));
      CHECK(real <= *wanted.most * (1 + 1e-12));
    }
    const double steps_up = (approximate(setting.setting) - 2) / approximate(tool.step);
    CHECK(std::abs(steps_up - std::round(steps_up)) < 1e-9);  // it is a mark of the scale
  }
  CHECK(held > 2000);
}

TEST_CASE("a scale that cannot be is refused") {
  const std::vector<TorqueWrench> none = {};
  CHECK(settings_for(target("28 N·m"), none)->empty());
  for (const TorqueWrench& bad :
       {wrench("60", "10", "1", "N·m"), wrench("10", "60", "0", "N·m"), wrench("10", "60", "1/3", "N·m"),
        wrench("10", "60", "1", "N·m", 60), TorqueWrench{number("1"), number("2"), number("1"), nullptr, 4},
        wrench("0", "999999", "0.0001", "N·m")}) {
    CHECK_FALSE(settings_for(target("28 N·m"), std::span(&bad, 1)));
  }
  CHECK_FALSE(settings_for({}, none));
  CHECK_FALSE(torque_target(parse_statement("28 mm", Dimension::length, Input::sheet)->figure()));
  CHECK(allowed_accuracy(10) == 6);
  CHECK(allowed_accuracy(100) == 4);
}
