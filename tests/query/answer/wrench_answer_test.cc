// SPDX-License-Identifier: GPL-2.0-or-later
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "query/answer/wrench.h"
#include "query/answer/wrench_drawing.h"
#include "tests/outside/table.h"

using namespace sheaf;
using Verdict = WrenchSetting::Verdict;

namespace {

constexpr const char* today = "2026-11-25";

const Unit* unit(std::string_view symbol, Dimension dimension = Dimension::torque) {
  return *unit_from(symbol, dimension);
}
Number number(std::string_view text) { return *parse_number(text, Input::sheet); }
Quantity millimetre(std::string_view text) { return {number(text), unit("mm", Dimension::length)}; }

CribWrench wrench(std::string name, std::string_view least, std::string_view most, std::string_view step,
                  std::string_view symbol, double accuracy, std::string due) {
  CribWrench made;
  made.address = "crib/" + name;
  made.name = std::move(name);
  made.scale = {number(least), number(most), number(step), unit(symbol), accuracy};
  made.length = millimetre("400");
  made.calibration_due = std::move(due);
  return made;
}

Statement torque(std::string_view text) {
  auto statement = parse_statement(text, Dimension::torque, Input::sheet);
  REQUIRE_MESSAGE(statement, text);
  return *statement;
}

const StageSetting& only_stage(const WrenchAnswer& answer) {
  REQUIRE(answer.stages.size() == 1);
  return answer.stages.front();
}

EntryRecord entry_with(std::string_view stated) {
  EntryRecord entry;
  entry.address = "sheet/bolt";
  entry.kind = "fastener";
  entry.name = "bolt";
  entry.fields = {{"torque", std::string(stated), {}}};
  return entry;
}

}  // namespace

TEST_CASE("among wrenches that hold, one past its calibration comes after one that is in date") {
  Crib crib;
  crib.wrenches = {wrench("overdue", "10", "60", "0.1", "N·m", 2, "2026-11-24"),
                   wrench("in date", "10", "60", "1", "N·m", 4, "2026-11-25")};
  const auto answer = choose_wrench(torque("35 ± 3 N·m"), {crib, today});
  REQUIRE(answer);
  const auto& choices = only_stage(*answer).choices;
  CHECK(choices[0].wrench.name == "in date");
  CHECK_FALSE(choices[0].overdue);  // the day itself is still good
  CHECK(choices[1].overdue);
  CHECK(doubts_of(choices[1]) == "its calibration was due 2026-11-24");
}

TEST_CASE("the shop's tolerance stands in only where the source states none, and is called the shop's") {
  Crib crib;
  crib.wrenches = {wrench("w", "10", "60", "0.5", "N·m", 4, "2027-01-01")};
  const auto bare = choose_wrench(torque("30 N·m"), {crib, today});
  CHECK(only_stage(*bare).tolerance_of == ToleranceOf::nobody);
  CHECK(set_line(only_stage(*bare)).find("the source states no tolerance") != std::string::npos);
  crib.tolerance = number("5");
  const auto shop = choose_wrench(torque("30 N·m"), {crib, today});
  CHECK(only_stage(*shop).tolerance_of == ToleranceOf::shop);
  CHECK(only_stage(*shop).is_held());
  CHECK(set_line(only_stage(*shop)).find("shop's own") != std::string::npos);
  const auto stated = choose_wrench(torque("30 ± 0.5 N·m"), {crib, today});
  CHECK(only_stage(*stated).tolerance_of == ToleranceOf::source);
  CHECK_FALSE(only_stage(*stated).can_be_set());
  CHECK(set_line(only_stage(*stated)).starts_with("no wrench here holds it"));
}

TEST_CASE("a wrench such as was said to be needed would do") {
  for (const char* asked : {"28 ± 0.5 N·m", "300 ± 30 N·m", "4 ± 0.2 N·m", "90 ± 3 lbf·ft"}) {
    CAPTURE(asked);
    Crib crib;
    crib.wrenches = {wrench("coarse", "10", "60", "5", "N·m", 6, "2027-01-01")};
    const auto answer = choose_wrench(torque(asked), {crib, today});
    const auto& stage = only_stage(*answer);
    REQUIRE(stage.wanted);
    REQUIRE(stage.wanted->step);
    for (const int marks : {100, 137, 400}) {  // wherever the scale begins, a mark falls into the window
      CribWrench better;
      better.name = "needed";
      const Number step = *stage.wanted->step;
      better.scale = {step,
                      {step.digits * marks * 40, step.places, 1},
                      step,
                      stage.band.unit,
                      approximate(stage.wanted->accuracy)};
      Crib other;
      other.wrenches = {better};
      if (approximate(better.scale.most) < approximate(*stage.band.most)) continue;
      CHECK(only_stage(*choose_wrench(torque(asked), {other, today})).is_held());
    }
  }
}

TEST_CASE("angles, hand tight, sums and withdrawn figures are not set on a wrench") {
  Crib crib;
  crib.wrenches = {wrench("w", "10", "60", "0.5", "N·m", 4, "2027-01-01")};
  const auto lines = set_lines(entry_with("20 N·m, 40 N·m, + 90°"), crib, today);
  REQUIRE(lines.size() == 3);
  CHECK(lines[0].starts_with("stage 1: "));
  CHECK(lines[2].find("90°") != std::string::npos);
  CHECK(set_lines(entry_with("hand tight + 3/4 turn"), crib, today).empty());
  auto sum = entry_with("40 ± 4 N·m");
  sum.fields.push_back({"torque-is", "total", {}});
  CHECK(set_lines(sum, crib, today).front().find("together") != std::string::npos);
  auto withdrawn = entry_with("40 ± 4 N·m");
  withdrawn.withdrawn.push_back({"2026-01-01", "misprint", ""});
  CHECK(set_lines(withdrawn, crib, today).empty());
  auto left = entry_with("40 ± 4 N·m");
  left.fields.push_back({"hand", "left", {}});
  CHECK(set_lines(left, crib, today).front().ends_with("it must work to the left"));
  CHECK(set_lines(entry_with("40 ± 4 N·m"), Crib{}, today).empty());
}

TEST_CASE("an adapter needs the wrench's length, and impossible geometry is refused") {
  Crib crib;
  crib.wrenches = {wrench("w", "10", "60", "0.5", "N·m", 4, "2027-01-01")};
  const auto with = [&](const char* offset, double degrees) {
    return choose_wrench(torque("35 ± 3 N·m"),
                         {crib, today, AdapterUse{{"crib/a", "adapter", "", millimetre(offset)}, degrees}});
  };
  CHECK(with("45", 0));
  CHECK_FALSE(with("400", 180));
  CHECK_FALSE(with("45", 200));
  crib.wrenches.front().length.reset();
  const auto unknown = with("45", 0);
  REQUIRE(unknown);
  CHECK_FALSE(only_stage(*unknown).can_be_set());
  CHECK_FALSE(geometry_of(*unknown));
}

TEST_CASE(
    "whatever is recommended keeps to the band for every true torque within the accuracy, as shown too") {
  std::mt19937 random(20261125);
  std::uniform_real_distribution<double> share(0, 1), angle(-180, 180);
  const char* units[] = {"N·m", "lbf·ft", "lbf·in"};
  int held = 0;
  for (int round = 0; round < 5000; ++round) {
    Crib crib;
    for (int i = 0; i < 3; ++i)
      crib.wrenches.push_back(wrench("w" + std::to_string(i), "5", std::to_string(50 + random() % 300),
                                     random() % 2 ? "0.5" : "1", units[random() % 3],
                                     static_cast<double>(1 + random() % 6), "2027-01-01"));
    const auto nominal = 10 + random() % 150, spread = 1 + random() % 15;
    const std::string asked =
        std::to_string(nominal) + " ± " + std::to_string(spread) + " " + units[random() % 3];
    if (spread >= nominal) continue;
    WrenchRequest request{crib, today};
    if (round % 2) request.adapter = AdapterUse{{"crib/a", "adapter", "", millimetre("60")}, angle(random)};
    const auto answer = choose_wrench(torque(asked), request);
    REQUIRE(answer);
    const auto& stage = only_stage(*answer);
    if (!stage.is_held()) continue;
    ++held;
    const auto& best = stage.choices.front();
    CAPTURE(asked);
    const double to_asked = static_cast<double>(best.on_scale.unit->factor.numerator) /
                            static_cast<double>(best.on_scale.unit->factor.denominator) *
                            static_cast<double>(stage.band.unit->factor.denominator) /
                            static_cast<double>(stage.band.unit->factor.numerator);
    const double lever =
        request.adapter ? 1 + 60.0 / 400 * std::cos(request.adapter->degrees * std::numbers::pi / 180) : 1;
    const double middle = approximate(best.on_scale.value) * to_asked * lever;
    const double off = best.wrench.scale.accuracy / 100;
    const double least = approximate(*stage.band.least), most = approximate(*stage.band.most);
    for (const double real : {middle * (1 - off), middle / (1 + off), middle * (1 + off), middle / (1 - off),
                              middle * (1 - off + 2 * off * share(random))}) {
      CHECK(real >= least * (1 - 1e-12));
      CHECK(real <= most * (1 + 1e-12));
      CHECK(real >= approximate(*best.torque.least) * (1 - 1e-9));  // what is shown holds all of it
      CHECK(real <= approximate(*best.torque.most) * (1 + 1e-9));
    }
    CHECK(compare(*best.torque.least, *stage.band.least) >= 0);  // and shows none of it beyond the band
    CHECK(compare(*best.torque.most, *stage.band.most) <= 0);
  }
  CHECK(held > 1000);
}

TEST_CASE("accuracy and dependable range are those of the published rules") {
  const auto rules = outside::csv("wrench_rules.csv");
  const auto value_of = [&](std::string_view id) {
    const auto row =
        std::ranges::find_if(rules, [&](const auto& each) { return outside::text(each, "rule_id") == id; });
    REQUIRE_MESSAGE(row != rules.end(), id);
    return outside::text(*row, "value");
  };
  CHECK(value_of("ISO-II-A-hi") == "+-" + std::to_string(static_cast<int>(allowed_accuracy(100))));
  CHECK(value_of("ISO-II-A-lo") == "+-" + std::to_string(static_cast<int>(allowed_accuracy(10))));
  CHECK(std::stod(value_of("NASA-20")) == doctest::Approx(dependable_share * 100));
}

TEST_CASE("the drawing lies within its width at every angle, with hand, square and fastener on it") {
  for (int degrees = -180; degrees <= 180; degrees += 5) {
    const WrenchGeometry geometry{300, 45, static_cast<double>(degrees), "300 mm", "45 mm", "w", "a"};
    std::string all;
    for (const auto& line : drawing(geometry, 76)) {
      CHECK(line.size() <= 76);
      all += line + "\n";
    }
    CAPTURE(all);
    for (const char* mark : {"(=)", "[#]", "(o)"}) CHECK(all.find(mark) != std::string::npos);
  }
}
