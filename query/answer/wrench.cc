// SPDX-License-Identifier: GPL-2.0-or-later
// The torque at the fastener is shown rounded outward and its distance to the band's end downward, so that
// no digit shown is better than what the wrench gives.
#include "query/answer/wrench.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <tuple>

#include "query/answer/fields.h"
#include "query/quantity/arithmetic.h"
#include "query/quantity/exact.h"

namespace sheaf {
namespace {

using Verdict = WrenchSetting::Verdict;

// ± per cent, coarsest first: ISO 6789-1 allows 6 and 4; finer ones are sold (common practice, no source).
constexpr std::array<Number, 6> sold_accuracies = {
    {{6, 0, 1}, {4, 0, 1}, {3, 0, 1}, {2, 0, 1}, {1, 0, 1}, {5, 1, 1}}};
constexpr std::array<int, 3> step_digits = {5, 2, 1};
constexpr double nothing = 1e-9;  // of a last digit: what doubles lose on the way

double factor_of(const Unit& unit) {
  return static_cast<double>(unit.factor.numerator) / static_cast<double>(unit.factor.denominator);
}

Number rounded(double value, int places, Rounding rounding) {
  const double scaled = value * std::pow(10, places);
  const double digits =
      rounding == Rounding::down ? std::floor(scaled + nothing) : std::ceil(scaled - nothing);
  return {static_cast<std::int64_t>(digits), static_cast<std::uint8_t>(places), 1};
}

// Enough to tell the band's own digits apart, and three digits of the value.
int places_for(const Figure& band, double value) {
  int places = value >= 100 ? 0 : value >= 10 ? 1 : value >= 1 ? 2 : 3;
  for (const auto& end : {band.least, band.most})
    if (end && end->denominator == 1) places = std::max(places, static_cast<int>(end->places));
  return std::min(places, 6);
}

Figure spread_of(const WrenchSetting& setting, const Figure& band) {
  const double in_unit = factor_of(*band.unit);
  const double least = setting.torque_nm.least / in_unit, most = setting.torque_nm.most / in_unit;
  const int places = places_for(band, least);
  Figure spread;
  spread.form = Form::range;
  spread.unit = band.unit;
  spread.least = rounded(least, places, Rounding::down);
  spread.most = rounded(most, places, Rounding::up);
  return spread;
}

std::optional<Quantity> margin_of(const WrenchSetting& setting, const Figure& band) {
  if (!band.least && !band.most) return std::nullopt;
  const double in_unit = factor_of(*band.unit);
  const double least = setting.torque_nm.least / in_unit, most = setting.torque_nm.most / in_unit;
  double margin = std::numeric_limits<double>::infinity();
  if (band.least) margin = std::min(margin, least - approximate(*band.least));
  if (band.most) margin = std::min(margin, approximate(*band.most) - most);
  return Quantity{rounded(margin, places_for(band, least), Rounding::down), band.unit};
}

// How far the torque may be from what was asked, as a share of it: what orders wrenches without a band.
double worst_deviation(const WrenchChoice& choice, const TorqueTarget& target) {
  if (!target.nominal) return 0;
  const auto& torque = choice.setting.torque_nm;
  return std::max(torque.most - *target.nominal, *target.nominal - torque.least) / *target.nominal;
}

class StageChooser {
 public:
  StageChooser(const Figure& asked, const WrenchRequest& request) : asked_(asked), request_(request) {}

  Result<StageSetting> choose();

 private:
  void settle_band();
  std::optional<Failure> try_wrench(const CribWrench& wrench);
  void sort();
  void want();

  const Figure& asked_;
  const WrenchRequest& request_;
  TorqueTarget target_;
  StageSetting stage_;
};

// The source's own band, else the shop's, else none.
void StageChooser::settle_band() {
  stage_.asked = asked_;
  stage_.band = asked_;
  const auto& shop = request_.crib.tolerance;
  if (asked_.least || asked_.most) return;
  stage_.tolerance_of = ToleranceOf::nobody;
  if (!shop || !asked_.nominal) return;
  stage_.band.least = less_by_per_cent(*asked_.nominal, *shop);
  stage_.band.most = more_by_per_cent(*asked_.nominal, *shop);
  if (stage_.band.least && stage_.band.most) {
    stage_.tolerance_of = ToleranceOf::shop;
    stage_.band.form = Form::range;
  } else {
    stage_.band = asked_;
  }
}

std::optional<Failure> StageChooser::try_wrench(const CribWrench& wrench) {
  WrenchChoice choice;
  choice.wrench = wrench;
  choice.overdue = !wrench.calibration_due.empty() && wrench.calibration_due < request_.today;
  std::optional<Adapter> adapter;
  if (request_.adapter && !wrench.length) {
    choice.unusable = "its length is not recorded, so an adapter cannot be reckoned with";
    stage_.choices.push_back(std::move(choice));
    return std::nullopt;
  }
  if (request_.adapter)
    adapter = Adapter{millimetres(*wrench.length), millimetres(request_.adapter->adapter.offset),
                      request_.adapter->degrees};
  const auto settings = settings_for(target_, std::span(&wrench.scale, 1), adapter);
  if (!settings) return Failure{wrench.name + ": " + settings.failure().message};
  choice.setting = settings->front();
  choice.on_scale = {choice.setting.setting, wrench.scale.unit};
  choice.torque = spread_of(choice.setting, stage_.band);
  choice.margin = margin_of(choice.setting, stage_.band);
  stage_.choices.push_back(std::move(choice));
  return std::nullopt;
}

// Those that do it first; among them those that can be trusted, and the widest margin. From a minimum or a
// maximum alone one can be as far as one likes: there the mark nearest to it is the best.
void StageChooser::sort() {
  const auto rank = [&](const WrenchChoice& choice) {
    const int doubts = (choice.setting.dependable ? 0 : 1) + (choice.overdue ? 1 : 0);
    const bool has_least = stage_.band.least.has_value(), has_most = stage_.band.most.has_value();
    const double badness = has_least && has_most   ? -choice.setting.margin
                           : has_least || has_most ? std::abs(choice.setting.margin)
                                                   : worst_deviation(choice, target_);
    return std::tuple(!choice.unusable.empty(), choice.setting.verdict, doubts, badness);
  };
  std::ranges::stable_sort(stage_.choices, [&](const WrenchChoice& left, const WrenchChoice& right) {
    return rank(left) < rank(right);
  });
}

// The coarsest scale of 1, 2 or 5 times a power of ten that always has a mark in the window.
std::optional<Number> coarsest_step(double window) {
  for (int places = 0; places <= 4; ++places)
    for (const int digit : step_digits)
      if (digit * std::pow(10, -places) <= window) return Number{digit, static_cast<std::uint8_t>(places), 1};
  return std::nullopt;
}

void StageChooser::want() {
  const auto& band = stage_.band;
  if (stage_.is_held() || !band.least || !band.most) return;
  const double least = approximate(*band.least), most = approximate(*band.most);
  for (const Number& accuracy : sold_accuracies) {
    const double share = 1 - approximate(accuracy) / 100;
    const auto step = coarsest_step(most * share - least / share);
    if (!step) continue;
    stage_.wanted = WrenchWanted{accuracy, step};
    return;
  }
}

Result<StageSetting> StageChooser::choose() {
  settle_band();
  auto target = torque_target(stage_.band);
  if (!target) return target.failure();
  target_ = std::move(target).value();
  if (stage_.band.nominal) target_.nominal = approximate(*stage_.band.nominal) * factor_of(*stage_.band.unit);
  for (const auto& wrench : request_.crib.wrenches)
    if (auto fault = try_wrench(wrench)) return *fault;
  sort();
  want();
  return std::move(stage_);
}

bool is_set_by_a_wrench(const Stage& stage) {
  return stage.act == Act::tighten && !stage.hand_tight && stage.figure.unit &&
         stage.figure.unit->dimension == Dimension::torque;
}

}  // namespace

bool StageSetting::is_held() const {
  return !choices.empty() && choices.front().unusable.empty() &&
         choices.front().setting.verdict == Verdict::holds;
}

bool StageSetting::can_be_set() const {
  if (choices.empty() || !choices.front().unusable.empty()) return false;
  const auto verdict = choices.front().setting.verdict;
  return verdict == Verdict::holds || verdict == Verdict::spreads ||
         (verdict == Verdict::leaves && tolerance_of == ToleranceOf::shop);
}

Result<WrenchAnswer> choose_wrench(const Statement& torque, const WrenchRequest& request) {
  WrenchAnswer answer;
  answer.torque = torque;
  answer.adapter = request.adapter;
  for (std::size_t i = 0; i < torque.stages.size(); ++i) {
    if (!is_set_by_a_wrench(torque.stages[i])) continue;
    auto stage = StageChooser(torque.stages[i].figure, request).choose();
    if (!stage) return stage.failure();
    answer.stages.push_back(std::move(stage).value());
    answer.stages.back().number = i + 1;
  }
  return answer;
}

Result<std::optional<WrenchAnswer>> choose_wrench(const EntryRecord& entry, const WrenchRequest& request) {
  const auto torque = statement_of(entry.fields, "torque", Dimension::torque);
  if (!torque || !entry.withdrawn.empty()) return std::optional<WrenchAnswer>();
  const bool for_all_together = says(entry.fields, "torque-is", "total");
  auto answer =
      for_all_together ? Result<WrenchAnswer>(WrenchAnswer{*torque}) : choose_wrench(*torque, request);
  if (!answer) return answer.failure();
  WrenchAnswer whole = std::move(answer).value();
  whole.for_all_together = for_all_together;
  whole.left_hand = says(entry.fields, "hand", "left");
  return std::optional(std::move(whole));
}

}  // namespace sheaf
