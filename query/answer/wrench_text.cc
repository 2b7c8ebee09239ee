// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/wrench_text.h"

#include "query/answer/text.h"
#include "query/answer/wrench_drawing.h"

namespace sheaf {
namespace {

using Verdict = WrenchSetting::Verdict;

constexpr std::string_view how_it_is_reckoned =
    "Accuracy is ± of the reading (ISO 6789-1). Below a fifth of its largest value a wrench is not "
    "dependable "
    "(US Army TM 1-1500-204-23-9, table 8-1).";

std::string band_words(const StageSetting& stage) {
  std::string words = lead_of(stage.asked);
  if (const auto band = band_of(stage.asked); !band.empty()) words += "  " + band;
  return words;
}

std::string range_words(const CribWrench& wrench) {
  Figure range;
  range.form = Form::range;
  range.least = wrench.scale.least;
  range.most = wrench.scale.most;
  range.unit = wrench.scale.unit;
  return shown(range);
}

std::string scale_words(const CribWrench& wrench) {
  return range_words(wrench) + " in steps of " + shown(Quantity{wrench.scale.step, wrench.scale.unit});
}

// What the setting gives, and how that lies against the band.
std::string outcome_words(const StageSetting& stage, const WrenchChoice& choice) {
  const bool leaves = choice.setting.verdict == Verdict::leaves;
  const std::string torque = shown(choice.torque);
  switch (stage.tolerance_of) {
    case ToleranceOf::source:
      return leaves ? "gives " + torque + ", which can leave the band" : "stays within " + torque;
    case ToleranceOf::shop:
      return "gives " + torque + (leaves ? ", more" : ", no more") + " than the shop's own tolerance";
    case ToleranceOf::nobody:
      return "gives " + torque;
  }
  return {};
}

std::string tolerance_words(const StageSetting& stage) {
  if (stage.tolerance_of == ToleranceOf::source) return {};
  std::string words = "the source states no tolerance";
  if (stage.tolerance_of == ToleranceOf::shop) words += "; the shop's own gives " + band_of(stage.band);
  return words;
}

std::vector<Line> wrench_block(const StageSetting& stage, const WrenchChoice& best,
                               const std::string& stage_name) {
  std::vector<Line> lines;
  Line first(stage_name + (best.wrench.shows ? "read off the " : "set on the ") + best.wrench.name);
  first.add(" · " + scale_words(best.wrench), Tone::quiet);
  lines.push_back(std::move(first));
  Line gives(outcome_words(stage, best), best.setting.verdict == Verdict::leaves ? Tone::act : Tone::plain);
  if (best.margin && best.setting.verdict == Verdict::holds)
    gives.add(", " + shown(*best.margin) + " from the nearer end");
  lines.push_back(std::move(gives));
  const std::string tolerance = tolerance_words(stage);
  if (!tolerance.empty()) lines.emplace_back(tolerance, Tone::act);
  const std::string doubts = doubts_of(best);
  if (!doubts.empty()) lines.emplace_back(doubts, Tone::caution);
  return lines;
}

// Why a wrench that comes after the first is not the first.
Line other_line(const StageSetting& stage, const WrenchChoice& choice) {
  if (!choice.unusable.empty()) return Line(choice.wrench.name + ": " + choice.unusable);
  if (choice.setting.verdict == Verdict::out_of_range)
    return Line(choice.wrench.name + ": its scale is " + range_words(choice.wrench));
  Line line(shown(choice.on_scale) + " on the " + choice.wrench.name + "; " + outcome_words(stage, choice));
  const std::string doubts = doubts_of(choice);
  if (!doubts.empty()) line.add("; " + doubts, Tone::caution);
  return line;
}

bool is_an_alternative(const WrenchChoice& choice) {
  return choice.unusable.empty() &&
         (choice.setting.verdict == Verdict::holds || choice.setting.verdict == Verdict::spreads);
}

void write_others(Page& page, const StageSetting& stage) {
  for (std::size_t i = stage.can_be_set() ? 1 : 0; i < stage.choices.size(); ++i)
    page.labelled(is_an_alternative(stage.choices[i]) ? "or" : "not", other_line(stage, stage.choices[i]));
}

Line wanted_line(const StageSetting& stage) {
  Line line("a wrench whose scale reaches " + shown(stage.asked));
  if (stage.wanted) {
    line.add(", accurate within ±\u00A0" + shown(stage.wanted->accuracy) + "\u00A0%");
    if (stage.wanted->step)
      line.add(", with marks " + shown(Quantity{*stage.wanted->step, stage.band.unit}) + " apart or closer");
  } else if (stage.band.least && stage.band.most) {
    line.add(", finer than any that is commonly sold: ask how the maker sets it");
  }
  return line;
}

void write_stage(Page& page, const StageSetting& stage, bool is_one_of_several) {
  const std::string name = is_one_of_several ? "stage " + std::to_string(stage.number) + ": " : "";
  if (!stage.can_be_set()) {
    page.line(Line(name + "No wrench in the crib holds " + band_words(stage) + ".", Tone::act), 2);
    write_others(page, stage);
    page.labelled("needed", wanted_line(stage));
    return;
  }
  const WrenchChoice& best = stage.choices.front();
  page.beside({Line(shown(best.on_scale), Tone::figure), Line("for " + band_words(stage))},
              wrench_block(stage, best, name));
  write_others(page, stage);
  if (best.setting.verdict == Verdict::leaves) page.labelled("needed", wanted_line(stage));
}

void write_adapter(Page& page, const WrenchAnswer& answer) {
  const auto geometry = geometry_of(answer);
  if (!geometry) return;
  page.labelled("adapter", Line(geometry->adapter + ", " + geometry->offset + " from square to fastener. " +
                                in_words(*geometry)));
  page.blank();
  for (const auto& line : drawing(*geometry, page.style().width - 4)) page.line(Line(line), 4);
  page.blank();
  page.line(Line("(=) hand, in the middle of the grip   [#] square   (o) fastener", Tone::quiet), 4);
  page.blank();
  page.labelled("formula", Line("setting = T · L/(L + E · cos θ); L = " + geometry->length +
                                " from hand to square, E = " + geometry->offset +
                                ". US Army TM 9-254, figures 45 and 46. The hand stays in the "
                                "middle of the grip (TM 1-1500-204-23-9, 8-5)."));
}

void write_entry(Page& page, const Answer& entry) {
  Line line(entry.name);
  for (const auto& act : entry.acts) line.add(" · ").add(act, Tone::act);
  page.labelled("of", line);
  for (const auto& caution : entry.entry.cautions)
    page.labelled("caution", Line(caution.text, Tone::caution));
  page.labelled("source", Line(source_line(entry.entry)));
  page.labelled(
      "", Line((entry.invented ? std::string(invented_notice) + " " : "") + std::string(authority_notice),
               Tone::quiet));
  page.labelled("address", Line(entry.address + (entry.variant.empty() ? "" : " for " + entry.variant)));
}

std::string calibration_words(const WrenchAnswer& answer) {
  for (const auto& stage : answer.stages)
    if (stage.can_be_set() && !stage.choices.front().wrench.calibration_due.empty())
      return "; calibration of the " + stage.choices.front().wrench.name + " due " +
             stage.choices.front().wrench.calibration_due;
  return {};
}

}  // namespace

void write_text(Page& page, const WrenchAnswer& answer, const Crib& crib, const Answer* entry) {
  if (answer.for_all_together)
    page.line(Line(shown(answer.torque) + " is for all of them together: no wrench is set to it.", Tone::act),
              2);
  else if (answer.stages.empty())
    page.line(Line(shown(answer.torque) + " is not set on a torque wrench.", Tone::act), 2);
  for (const auto& stage : answer.stages) write_stage(page, stage, answer.torque.stages.size() > 1);
  if (answer.torque.stages.size() > 1) page.labelled("all", Line(shown(answer.torque)));
  if (answer.left_hand)
    page.labelled("note", Line("Left-hand thread: the wrench must work to the left.", Tone::act));
  write_adapter(page, answer);
  if (entry) write_entry(page, *entry);
  if (!answer.stages.empty()) page.labelled("how", Line(how_it_is_reckoned, Tone::quiet));
  const std::string where = crib.sheet.empty() ? "" : ", " + crib.sheet + " in " + crib.library;
  page.labelled("crib", Line(crib.shop + where + calibration_words(answer)));
}

}  // namespace sheaf
