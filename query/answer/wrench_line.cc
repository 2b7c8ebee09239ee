// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "query/answer/fields.h"
#include "query/answer/text.h"
#include "query/answer/wrench.h"

namespace sheaf {
namespace {

using Verdict = WrenchSetting::Verdict;

std::string on_wrench(const WrenchChoice& choice) {
  std::string words = shown(choice.on_scale) + (choice.wrench.shows ? " read off the " : " on the ");
  return words + choice.wrench.name;
}

// What the setting gives, and against which band that is measured.
std::string outcome(const StageSetting& stage, const WrenchChoice& choice) {
  const std::string torque = shown(choice.torque);
  const bool holds = choice.setting.verdict == Verdict::holds;
  switch (stage.tolerance_of) {
    case ToleranceOf::source:
      return holds ? "stays within " + torque : "gives " + torque + ", which can leave the band";
    case ToleranceOf::shop:
      return "gives " + torque + (holds ? ", within" : ", more than") +
             " the shop's own tolerance; the source states none";
    case ToleranceOf::nobody:
      return "gives " + torque + "; the source states no tolerance";
  }
  return {};
}

std::string further_act(const Stage& stage) {
  if (stage.hand_tight) return "by hand";
  if (stage.act == Act::loosen_fully) return "loosen fully";
  return (stage.act == Act::loosen ? "loosen " : "turn on ") + shown(stage.figure) +
         ", by an angle gauge or a mark";
}

}  // namespace

std::string doubts_of(const WrenchChoice& choice) {
  std::vector<std::string> doubts;
  if (choice.overdue) doubts.push_back("its calibration was due " + choice.wrench.calibration_due);
  if (choice.wrench.calibration_due.empty()) doubts.push_back("when its calibration is due is not recorded");
  if (!choice.setting.dependable) doubts.push_back("below a fifth of its largest value it is not dependable");
  return joined(doubts, "; ");
}

std::string set_line(const StageSetting& stage) {
  if (stage.choices.empty()) return {};
  const WrenchChoice& best = stage.choices.front();
  if (!best.unusable.empty()) return "no wrench here can be used with it: " + best.unusable;
  if (best.setting.verdict == Verdict::out_of_range) return "no wrench here reaches " + shown(stage.asked);
  std::string line = on_wrench(best) + "; " + outcome(stage, best);
  if (!stage.can_be_set()) line = "no wrench here holds it; nearest " + line;
  const std::string doubts = doubts_of(best);
  return doubts.empty() ? line : line + "; " + doubts;
}

std::vector<std::string> set_lines(const WrenchAnswer& answer) {
  if (answer.for_all_together) return {"the figure is for all of them together: no wrench is set to it"};
  std::vector<std::string> lines;
  const auto& stages = answer.torque.stages;
  std::size_t next = 0;
  for (std::size_t i = 0; i < stages.size(); ++i) {
    const bool is_set = next < answer.stages.size() && answer.stages[next].number == i + 1;
    std::string line = is_set ? set_line(answer.stages[next++]) : further_act(stages[i]);
    if (stages.size() > 1) line = "stage " + std::to_string(i + 1) + ": " + line;
    lines.push_back(std::move(line));
  }
  if (answer.stages.empty()) lines.clear();  // hand tight, or an angle alone: nothing is set
  if (answer.left_hand && !lines.empty()) lines.back() += "; it must work to the left";
  return lines;
}

std::vector<std::string> set_lines(const EntryRecord& entry, const Crib& crib, std::string_view today) {
  if (crib.wrenches.empty()) return {};
  const auto answer = choose_wrench(entry, {crib, std::string(today)});
  if (!answer) return {"no wrench can be chosen: " + answer.failure().message};
  return *answer ? set_lines(**answer) : std::vector<std::string>();
}

std::optional<Failure> add_set_lines(std::vector<Answer>& answers, const std::vector<Library*>& libraries,
                                     const std::function<Result<std::string>()>& today) {
  const auto has_torque = [](const Answer& answer) {
    return text_of(answer.entry.fields, "torque") != nullptr;
  };
  if (std::ranges::none_of(answers, has_torque)) return std::nullopt;
  const auto crib = read_crib(libraries);
  if (!crib) return crib.failure();
  if (!*crib) return std::nullopt;
  const auto day = today();
  if (!day) return day.failure();
  for (auto& answer : answers) answer.set = set_lines(answer.entry, **crib, *day);
  return std::nullopt;
}

}  // namespace sheaf
