// SPDX-License-Identifier: GPL-2.0-or-later
#include <cmath>

#include "query/answer/answer_json.h"
#include "query/answer/wrench_drawing.h"
#include "query/answer/wrench_text.h"

namespace sheaf {
namespace {

using Verdict = WrenchSetting::Verdict;

std::string_view name_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::holds:
      return "holds";
    case Verdict::spreads:
      return "spreads";
    case Verdict::leaves:
      return "leaves";
    case Verdict::out_of_range:
      return "out-of-range";
  }
  return "";
}

std::string_view name_of(ToleranceOf whose) {
  switch (whose) {
    case ToleranceOf::source:
      return "source";
    case ToleranceOf::shop:
      return "shop";
    case ToleranceOf::nobody:
      return "nobody";
  }
  return "";
}

void write_quantity(JsonWriter& json, std::string_view name, const Quantity& quantity) {
  json.key(name).begin_object();
  json.key("value").number(quantity.value);
  json.member("unit", quantity.unit->symbol);
  json.end_object();
}

void write_figure(JsonWriter& json, std::string_view name, const Figure& figure) {
  json.key(name).begin_object();
  json.member("text", shown(figure));
  write_json(json, figure);
  json.end_object();
}

void write_choice(JsonWriter& json, const WrenchChoice& choice) {
  json.begin_object();
  json.member("wrench", choice.wrench.name);
  json.member("address", choice.wrench.address);
  json.member("verdict", choice.unusable.empty() ? name_of(choice.setting.verdict) : "unusable");
  json.member_if("because", choice.unusable);
  if (choice.unusable.empty() && choice.setting.verdict != Verdict::out_of_range) {
    write_quantity(json, choice.wrench.shows ? "read" : "set", choice.on_scale);
    write_figure(json, "torque", choice.torque);
    if (choice.margin) write_quantity(json, "margin", *choice.margin);
    json.key("dependable").boolean(choice.setting.dependable);
  }
  json.member_if("calibration-due", choice.wrench.calibration_due);
  json.key("overdue").boolean(choice.overdue);
  json.end_object();
}

void write_stage(JsonWriter& json, const StageSetting& stage) {
  json.begin_object();
  json.key("stage").number(static_cast<long long>(stage.number));
  write_figure(json, "asked", stage.asked);
  json.member("tolerance-of", name_of(stage.tolerance_of));
  if (stage.tolerance_of == ToleranceOf::shop) write_figure(json, "band", stage.band);
  json.key("held").boolean(stage.is_held());
  json.member("text", set_line(stage));
  json.key("choices").begin_array();
  for (const auto& choice : stage.choices) write_choice(json, choice);
  json.end_array();
  if (stage.wanted) {
    json.key("wanted").begin_object();
    json.key("accuracy").number(stage.wanted->accuracy);
    if (stage.wanted->step) write_quantity(json, "step", {*stage.wanted->step, stage.band.unit});
    json.end_object();
  }
  json.end_object();
}

void write_adapter(JsonWriter& json, const WrenchAnswer& answer) {
  if (!answer.adapter) return;
  json.key("adapter").begin_object();
  json.member("address", answer.adapter->adapter.address);
  json.member("name", answer.adapter->adapter.name);
  write_quantity(json, "offset", answer.adapter->adapter.offset);
  json.key("degrees").number(Number{std::llround(answer.adapter->degrees * 10), 1, 1});
  if (const auto geometry = geometry_of(answer)) {
    json.member("in-words", in_words(*geometry));
    json.member("formula", "setting = T · L/(L + E · cos θ)");
    json.member("source", "US Army TM 9-254, figures 45 and 46");
  }
  json.end_object();
}

}  // namespace

void write_json(JsonWriter& json, const WrenchAnswer& answer, const Crib& crib, const Answer* entry) {
  json.begin_object();
  json.member("torque", shown(answer.torque));
  if (entry) {
    json.key("entry");
    write_json(json, *entry);
  }
  json.key("for-all-together").boolean(answer.for_all_together);
  json.key("left-hand").boolean(answer.left_hand);
  json.key("stages").begin_array();
  for (const auto& stage : answer.stages) write_stage(json, stage);
  json.end_array();
  write_adapter(json, answer);
  json.key("set").begin_array();
  for (const auto& line : set_lines(answer)) json.string(line);
  json.end_array();
  json.key("crib").begin_object();
  json.member("shop", crib.shop);
  json.member("sheet", crib.sheet);
  json.member("library", crib.library);
  json.end_object();
  json.end_object();
}

}  // namespace sheaf
