// SPDX-License-Identifier: GPL-2.0-or-later
// What is recommended is held against a wrench that errs by as much as it may, over random figures, cribs and
// adapters: no torque that it can give lies outside the band, what is shown hides nothing of it, and where
// nothing is recommended no mark of any scale would have done.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <random>

#include "query/answer/wrench.h"

using namespace sheaf;
using Verdict = WrenchSetting::Verdict;

namespace {

constexpr int rounds = 120'000;
constexpr double rounding = 1e-9;  // relative: what doubles lose, far below any digit of a scale

struct Ends {
  double least = 0, most = 0;  // N·m
};

double nm_of(const Unit& unit) {
  return static_cast<double>(unit.factor.numerator) / static_cast<double>(unit.factor.denominator);
}

Number decimal(double value, int places) {
  return {std::llround(value * std::pow(10, places)), static_cast<std::uint8_t>(places), 1};
}

class Chance {
 public:
  double between(double least, double most) { return std::uniform_real_distribution(least, most)(random_); }
  int below(int end) { return static_cast<int>(random_() % static_cast<unsigned>(end)); }
  const Unit& unit() {
    constexpr std::array<const char*, 4> symbols = {"N·m", "lbf·ft", "lbf·in", "kgf·m"};
    return **unit_from(symbols[static_cast<std::size_t>(below(4))], Dimension::torque);
  }

  // A torque as a sheet writes it: ± or a range, a minimum or maximum, or bare. The band is in N·m.
  Figure torque(Ends& band) {
    const Unit& in = unit();
    const double aim = between(2, 220) / nm_of(in), half = aim * between(0.005, 0.3);
    const int places = 1 + below(2);
    Figure figure;
    figure.unit = &in;
    const int form = below(8);
    if (form == 0) {
      figure.form = Form::minimum;
      figure.least = decimal(aim, places);
    } else if (form == 1) {
      figure.form = Form::maximum;
      figure.most = decimal(aim, places);
    } else {
      figure.form = form == 2 ? Form::range : Form::nominal;
      if (form != 2) figure.nominal = decimal(aim, places);
      if (form < 7) figure.least = decimal(aim - half, places), figure.most = decimal(aim + half, places);
    }
    constexpr double endless = std::numeric_limits<double>::infinity();
    band.least = figure.least ? approximate(*figure.least) * nm_of(in) : -endless;
    band.most = figure.most ? approximate(*figure.most) * nm_of(in) : endless;
    return figure;
  }

  CribWrench wrench() {
    constexpr std::array<const char*, 7> steps = {"0.1", "0.2", "0.25", "0.5", "1", "2", "5"};
    CribWrench made;
    made.name = "wrench";
    const Unit& in = unit();
    const Number step = *parse_number(steps[static_cast<std::size_t>(below(7))], Input::sheet);
    const double width = approximate(step);
    const double least = std::max(width, std::round(between(1, 40) / nm_of(in) / width) * width);
    const double most = least + width * std::round(between(10, 600));
    made.scale = {decimal(least, 2), decimal(most, 2), step, &in, between(0.5, 10)};
    made.length = Quantity{decimal(between(150, 900), 0), *unit_from("mm", Dimension::length)};
    made.calibration_due = below(3) == 0 ? "2026-01-01" : "2027-01-01";
    return made;
  }

  AdapterUse adapter() {
    const Quantity offset{decimal(between(0, 120), 0), *unit_from("mm", Dimension::length)};
    return {{"crib/a", "adapter", "", offset}, below(4) == 0 ? below(9) * 45.0 - 180 : between(-180, 180)};
  }

 private:
  std::mt19937 random_{20261125};
};

// Torque at the fastener over torque at the square; written anew from US Army TM 9-254, figure 46.
double lever(const CribWrench& wrench, const std::optional<AdapterUse>& use) {
  if (!use) return 1;
  const double length = approximate(wrench.length->value), offset = approximate(use->adapter.offset.value);
  return (length + offset * std::cos(use->degrees * std::numbers::pi / 180)) / length;
}

// All that the wrench may give at that reading, whichever of torque and reading its accuracy is a share of.
Ends given_at(double reading, const CribWrench& wrench, double factor) {
  const double middle = reading * nm_of(*wrench.scale.unit) * factor, share = wrench.scale.accuracy / 100;
  return {middle * std::min(1 - share, 1 / (1 + share)), middle * std::max(1 + share, 1 / (1 - share))};
}

bool inside(const Ends& given, const Ends& band) {
  return given.least >= band.least * (1 - rounding) && given.most <= band.most * (1 + rounding);
}

bool is_a_mark(const Number& setting, const TorqueWrench& scale) {
  const double steps = (approximate(setting) - approximate(scale.least)) / approximate(scale.step);
  return steps > -rounding && approximate(setting) <= approximate(scale.most) + rounding &&
         std::abs(steps - std::round(steps)) < 1e-6;
}

void check_shown(const WrenchChoice& choice, const Ends& given, const Ends& band) {
  const double unit = nm_of(*choice.torque.unit);
  CHECK(approximate(*choice.torque.least) * unit <= given.least * (1 + rounding));
  CHECK(approximate(*choice.torque.most) * unit >= given.most * (1 - rounding));
  REQUIRE(choice.margin);
  const double margin = approximate(choice.margin->value) * unit;
  CHECK(margin <= std::min(given.least - band.least, band.most - given.most) + given.most * rounding);
}

// The rare mark that lies within rounding of the band's end may be left out.
bool some_mark_would_do(const WrenchChoice& choice, const Ends& band, double factor) {
  const TorqueWrench& scale = choice.wrench.scale;
  const double step = approximate(scale.step);
  for (double mark = approximate(scale.least); mark <= approximate(scale.most) + rounding; mark += step) {
    const Ends given = given_at(mark, choice.wrench, factor);
    if (given.least > band.least * (1 + rounding) && given.most < band.most * (1 - rounding)) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("no recommended setting can leave the band, whatever the wrench gives within its accuracy") {
  Chance chance;
  int held = 0, unheld = 0, of_the_shop = 0, with_adapter = 0;
  for (int round = 0; round < rounds; ++round) {
    Ends band;
    Statement torque;
    torque.stages.push_back({});
    torque.stages.front().figure = chance.torque(band);
    Crib crib;
    for (int i = 0; i < 3; ++i) crib.wrenches.push_back(chance.wrench());
    if (round % 2) crib.tolerance = Number{5, 0, 1};
    WrenchRequest request{crib, "2026-11-25", {}};
    if (round % 3 == 0) request.adapter = chance.adapter();
    const auto answer = choose_wrench(torque, request);
    if (!answer && request.adapter) continue;  // it reaches back to the hand
    REQUIRE(answer);
    const StageSetting& stage = answer->stages.front();
    if (stage.tolerance_of == ToleranceOf::shop) {
      const Figure& figure = stage.asked;
      band = {approximate(*figure.nominal) * nm_of(*figure.unit) * 0.95,
              approximate(*figure.nominal) * nm_of(*figure.unit) * 1.05};
    }
    if (stage.tolerance_of == ToleranceOf::nobody) {
      CHECK_FALSE(stage.is_held());
      continue;
    }
    for (const WrenchChoice& choice : stage.choices) {
      const double factor = lever(choice.wrench, request.adapter);
      if (choice.setting.verdict == Verdict::holds) {
        const Ends given = given_at(approximate(choice.on_scale.value), choice.wrench, factor);
        CHECK(inside(given, band));
        CHECK(is_a_mark(choice.on_scale.value, choice.wrench.scale));
        check_shown(choice, given, band);
        ++held;
        of_the_shop += stage.tolerance_of == ToleranceOf::shop;
        with_adapter += request.adapter.has_value();
      } else if (round % 40 == 0) {
        CHECK_FALSE(some_mark_would_do(choice, band, factor));
        ++unheld;
      }
    }
  }
  CHECK(held > 100'000);
  CHECK(unheld > 2'000);
  CHECK(of_the_shop > 1'000);
  CHECK(with_adapter > 10'000);
}

TEST_CASE(
    "among wrenches that hold, the first can be trusted as much as any, and has the widest margin of such") {
  Chance chance;
  int several = 0;
  for (int round = 0; round < 20'000; ++round) {
    Ends band;
    Statement torque;
    torque.stages.push_back({});
    torque.stages.front().figure = chance.torque(band);
    Crib crib;
    for (int i = 0; i < 4; ++i) crib.wrenches.push_back(chance.wrench());
    const auto answer = choose_wrench(torque, {crib, "2026-11-25", {}});
    REQUIRE(answer);
    const auto& choices = answer->stages.front().choices;
    const auto doubts = [](const WrenchChoice& choice) {
      return !choice.setting.dependable + choice.overdue;
    };
    for (std::size_t i = 1; i < choices.size() && choices[i].setting.verdict == Verdict::holds; ++i) {
      ++several;
      CHECK(doubts(choices[0]) <= doubts(choices[i]));
      if (doubts(choices[0]) != doubts(choices[i])) continue;
      const bool two_ends = std::isfinite(band.least) && std::isfinite(band.most);
      const double first = choices[0].setting.margin, other = choices[i].setting.margin;
      CHECK((two_ends ? first >= other : first <= other));
    }
  }
  CHECK(several > 5'000);
}
