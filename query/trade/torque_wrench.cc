// SPDX-License-Identifier: GPL-2.0-or-later
// Settings are whole steps of a scale, so they are counted, not computed: a mark is least + n steps,
// exactly, and what is shown is what is marked.
#include "query/trade/torque_wrench.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <tuple>

namespace sheaf {
namespace {

constexpr double most_marks = 1e6;
constexpr double most_torque = 1e5;  // N·m
constexpr double endless = std::numeric_limits<double>::infinity();

struct Scale {
  std::int64_t first = 0, step = 0, last = 0;  // in units of 10^-places
  std::uint8_t places = 0;
  double nm_per_unit = 1;

  std::int64_t marks() const { return (last - first) / step; }
  Number at(std::int64_t mark) const { return Number{first + mark * step, places, 1}; }
  double nm(std::int64_t mark) const { return approximate(at(mark)) * nm_per_unit; }
};

std::int64_t at_places(const Number& number, std::uint8_t places) {
  std::int64_t digits = number.digits;
  for (int i = number.places; i < places; ++i) digits *= 10;
  return digits;
}

Result<Scale> scale_of(const TorqueWrench& wrench) {
  if (!wrench.unit || wrench.unit->dimension != Dimension::torque)
    return Failure{"a torque wrench has a scale of torque"};
  if (auto failure =
          outside_range({{"accuracy", wrench.accuracy, {0, 50}, "%"},
                         {"largest value", approximate(wrench.most), {1e-3, 1e6}, ""},
                         {"smallest value", approximate(wrench.least), {0, approximate(wrench.most)}, ""},
                         {"step", approximate(wrench.step), {1e-6, 1e6}, ""}})) {
    return *failure;
  }
  const Number* numbers[] = {&wrench.least, &wrench.most, &wrench.step};
  Scale scale;
  for (const Number* number : numbers) {
    if (number->denominator != 1 || number->places > 6)
      return Failure{"a scale is marked in decimals, to six places at most"};
    scale.places = std::max(scale.places, number->places);
  }
  scale.first = at_places(wrench.least, scale.places);
  scale.last = at_places(wrench.most, scale.places);
  scale.step = at_places(wrench.step, scale.places);
  if (static_cast<double>(scale.marks()) > most_marks) return Failure{"a scale has at most a million marks"};
  scale.nm_per_unit = static_cast<double>(wrench.unit->factor.numerator) /
                      static_cast<double>(wrench.unit->factor.denominator);
  return scale;
}

struct Candidate {
  std::int64_t mark = 0;
  Band torque;
  double margin = -endless;
};

class WrenchTrial {
 public:
  WrenchTrial(const TorqueTarget& target, const Scale& scale, double accuracy, double factor)
      : target_(target), scale_(scale), share_(1 - accuracy / 100), factor_(factor) {}

  bool has_band() const { return target_.least || target_.most; }

  Candidate at(std::int64_t mark) const {
    const double middle = scale_.nm(mark) * factor_;
    Candidate candidate{mark, {middle * share_, middle / share_}, 0};
    const double below = candidate.torque.least - target_.least.value_or(-endless);
    const double above = target_.most.value_or(endless) - candidate.torque.most;
    candidate.margin = middle > 0 ? std::min(below, above) / middle : -endless;
    return candidate;
  }

  // The setting that lies furthest from both ends, and the nominal where there is one: the best mark is
  // beside one of them.
  double best_nm() const {
    if (!has_band()) return *target_.nominal;
    if (target_.least && target_.most) return (*target_.least + *target_.most) / (share_ + 1 / share_);
    return target_.least ? *target_.least / share_ : *target_.most * share_;
  }

  // Nearest to the nominal among the marks that hold; else the one with the best margin.
  Candidate best() const {
    const double aim = target_.nominal.value_or(best_nm());
    std::optional<Candidate> holding, widest;
    for (double torque : {aim, best_nm()}) {
      const std::int64_t beside = mark_near(torque);
      for (std::int64_t mark = std::max<std::int64_t>(0, beside - 1);
           mark <= std::min(scale_.marks(), beside + 1); ++mark) {
        const Candidate candidate = at(mark);
        if (candidate.margin >= 0 && (!holding || distance(mark, aim) < distance(holding->mark, aim)))
          holding = candidate;
        if (!widest || candidate.margin > widest->margin) widest = candidate;
      }
    }
    if (!has_band()) return at(mark_near(aim));
    return holding ? *holding : *widest;
  }

  bool reaches(double torque_nm) const {
    const double on_scale = torque_nm / factor_;
    const double half_step =
        static_cast<double>(scale_.step) / 2 * scale_.nm_per_unit * std::pow(10, -scale_.places);
    return on_scale >= scale_.nm(0) - half_step && on_scale <= scale_.nm(scale_.marks()) + half_step;
  }

 private:
  double distance(std::int64_t mark, double torque) const {
    return std::abs(scale_.nm(mark) * factor_ - torque);
  }

  std::int64_t mark_near(double torque_nm) const {
    const double on_scale = torque_nm / factor_ / scale_.nm_per_unit * std::pow(10, scale_.places);
    const double mark =
        std::round((on_scale - static_cast<double>(scale_.first)) / static_cast<double>(scale_.step));
    return static_cast<std::int64_t>(std::clamp(mark, 0.0, static_cast<double>(scale_.marks())));
  }

  const TorqueTarget& target_;
  const Scale& scale_;
  double share_;
  double factor_;
};

Result<WrenchSetting> try_wrench(const TorqueTarget& target, const TorqueWrench& wrench, double factor) {
  using Verdict = WrenchSetting::Verdict;
  const auto scale = scale_of(wrench);
  if (!scale) return scale.failure();
  const WrenchTrial trial(target, *scale, wrench.accuracy, factor);
  const Candidate best = trial.best();
  WrenchSetting setting;
  setting.setting = scale->at(best.mark);
  setting.torque_nm = best.torque;
  setting.margin = trial.has_band() ? best.margin : 0;
  setting.dependable = approximate(setting.setting) >= dependable_share * approximate(wrench.most);
  const bool holds = trial.has_band() && best.margin >= 0;
  if (holds)
    setting.verdict = Verdict::holds;
  else if (!trial.reaches(target.nominal.value_or(trial.best_nm())))
    setting.verdict = Verdict::out_of_range;
  else
    setting.verdict = trial.has_band() ? Verdict::leaves : Verdict::spreads;
  return setting;
}

std::optional<Failure> check(const TorqueTarget& target) {
  for (const auto& torque : {target.nominal, target.least, target.most}) {
    if (!torque) continue;
    if (auto failure = outside_range({{"torque", *torque, {1e-3, most_torque}, "N·m"}})) return failure;
  }
  if (!target.nominal && !target.least && !target.most) return Failure{"there is no torque to set"};
  if (target.least && target.most && *target.least > *target.most)
    return Failure{"the least torque is more than the most"};
  return std::nullopt;
}

}  // namespace

Result<double> adapter_factor(const Adapter& adapter) {
  if (auto failure =
          outside_range({{"length from the hand to the drive", adapter.hand_to_drive_mm, {50, 3000}, "mm"},
                         {"length of the adapter", adapter.drive_to_fastener_mm, {0, 1000}, "mm"},
                         {"angle of the adapter", adapter.degrees, {-180, 180}, "°"}})) {
    return *failure;
  }
  const double reach = adapter.drive_to_fastener_mm * std::cos(adapter.degrees * std::numbers::pi / 180);
  if (adapter.hand_to_drive_mm + reach < 0.1 * adapter.hand_to_drive_mm) {
    return Failure{"impossible: the adapter points back to the hand or beyond it, and would give no torque"};
  }
  return (adapter.hand_to_drive_mm + reach) / adapter.hand_to_drive_mm;
}

Result<double> setting_with_adapter(double torque, const Adapter& adapter) {
  const auto factor = adapter_factor(adapter);
  if (!factor) return factor;
  return torque / *factor;
}

Result<double> torque_with_adapter(double setting, const Adapter& adapter) {
  const auto factor = adapter_factor(adapter);
  if (!factor) return factor;
  return setting * *factor;
}

Result<TorqueTarget> torque_target(const Figure& torque, std::optional<double> default_tolerance) {
  if (!torque.unit || torque.unit->dimension != Dimension::torque) return Failure{"not a torque"};
  const double nm = static_cast<double>(torque.unit->factor.numerator) /
                    static_cast<double>(torque.unit->factor.denominator);
  TorqueTarget target;
  if (torque.nominal) target.nominal = approximate(*torque.nominal) * nm;
  if (torque.least) target.least = approximate(*torque.least) * nm;
  if (torque.most) target.most = approximate(*torque.most) * nm;
  if (!target.nominal && target.least && target.most) target.nominal = (*target.least + *target.most) / 2;
  if (default_tolerance && !target.least && !target.most && target.nominal) {
    if (auto failure = outside_range({{"default tolerance", *default_tolerance, {0.1, 50}, "%"}}))
      return *failure;
    target.least = *target.nominal * (1 - *default_tolerance / 100);
    target.most = *target.nominal * (1 + *default_tolerance / 100);
  }
  if (auto failure = check(target)) return *failure;
  return target;
}

Result<std::vector<WrenchSetting>> settings_for(const TorqueTarget& target,
                                                std::span<const TorqueWrench> wrenches,
                                                const std::optional<Adapter>& adapter) {
  if (auto failure = check(target)) return *failure;
  double factor = 1;
  if (adapter) {
    const auto given = adapter_factor(*adapter);
    if (!given) return given.failure();
    factor = *given;
  }
  std::vector<WrenchSetting> settings;
  for (std::size_t i = 0; i < wrenches.size(); ++i) {
    auto setting = try_wrench(target, wrenches[i], factor);
    if (!setting) return setting.failure();
    settings.push_back(*setting);
    settings.back().wrench = i;
  }
  std::stable_sort(settings.begin(), settings.end(),
                   [](const WrenchSetting& left, const WrenchSetting& right) {
                     return std::tuple(left.verdict, !left.dependable, -left.margin) <
                            std::tuple(right.verdict, !right.dependable, -right.margin);
                   });
  return settings;
}

Result<double> accuracy_needed(Band torque_nm) {
  if (auto failure = outside_range({{"least torque", torque_nm.least, {1e-3, torque_nm.most}, "N·m"},
                                    {"most torque", torque_nm.most, {1e-3, most_torque}, "N·m"}})) {
    return *failure;
  }
  return (1 - std::sqrt(torque_nm.least / torque_nm.most)) * 100;
}

double allowed_accuracy(double largest_nm) { return largest_nm <= 10 ? 6 : 4; }

}  // namespace sheaf
