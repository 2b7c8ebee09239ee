// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/answer_json.h"

#include <algorithm>

namespace sheaf {
namespace {

void write_strings(JsonWriter& json, std::string_view name, const std::vector<std::string>& texts) {
  json.key(name).begin_array();
  for (const auto& text : texts) json.string(text);
  json.end_array();
}

void write_number_if(JsonWriter& json, std::string_view name, const std::optional<Number>& number) {
  if (number) json.key(name).number(*number);
}

std::string_view name_of(Act act) {
  switch (act) {
    case Act::tighten:
      return "tighten";
    case Act::turn_further:
      return "turn-further";
    case Act::loosen:
      return "loosen";
    case Act::loosen_fully:
      return "loosen-fully";
  }
  return "";
}

void write_stage(JsonWriter& json, const Stage& stage) {
  json.begin_object();
  json.member("act", stage.hand_tight ? "hand-tight" : name_of(stage.act));
  if (stage.figure.unit) write_json(json, stage.figure);
  json.end_object();
}

void write_place(JsonWriter& json, const Place& place) {
  if (place.file.empty()) return;
  json.member("file", place.file);
  json.key("line").number(place.line);
}

void write_derived(JsonWriter& json, const Derived& derived) {
  json.begin_object();
  json.member("text", shown(derived.statement));
  write_json(json, derived.statement);
  json.key("derived").boolean(true);
  json.key("exact").boolean(derived.exact);
  json.end_object();
}

void write_value(JsonWriter& json, const Value& value) {
  json.begin_object();
  json.member("field", value.key);
  json.member("text", value.text);
  json.member("shown", value.lead);
  if (value.statement) {
    write_json(json, *value.statement);
    json.key("converted").begin_array();
    for (const auto& derived : value.derived) write_derived(json, derived);
    json.end_array();
  }
  write_place(json, value.place);
  json.end_object();
}

void write_values(JsonWriter& json, std::string_view name, const std::vector<Value>& values) {
  json.key(name).begin_array();
  for (const auto& value : values) write_value(json, value);
  json.end_array();
}

void write_year_if(JsonWriter& json, std::string_view name, int year) {
  if (year > 0) json.key(name).number(year);
}

void write_cautions(JsonWriter& json, const std::vector<CautionRecord>& cautions) {
  json.key("cautions").begin_array();
  for (const auto& caution : cautions) {
    json.begin_object();
    json.member("name", caution.name);
    json.member("text", caution.text);
    json.end_object();
  }
  json.end_array();
}

void write_source(JsonWriter& json, const SourceRecord& source) {
  json.key("source").begin_object();
  json.member_if("title", source.title);
  json.member_if("publisher", source.publisher);
  json.member_if("edition", source.edition);
  write_year_if(json, "year", source.year);
  json.member_if("page", source.page);
  json.member_if("note", source.note);
  json.end_object();
}

void write_checked(JsonWriter& json, const CheckRecord& checked) {
  json.key("checked").begin_object();
  json.member_if("on", checked.on);
  json.member_if("by", checked.by);
  json.member_if("against", checked.against);
  json.member_if("second", checked.second);
  json.end_object();
}

void write_withdrawal(JsonWriter& json, const EntryRecord& entry) {
  if (entry.withdrawn.empty()) return;
  const auto& withdrawal = entry.withdrawn.front();
  json.key("withdrawn").begin_object();
  json.member("on", withdrawal.on);
  json.member("reason", withdrawal.reason);
  json.member_if("instead", withdrawal.instead);
  json.end_object();
}

// Every field as the sheet has it: a string, or an array where it is stated more than once.
void write_fields(JsonWriter& json, const std::vector<FieldRecord>& fields) {
  json.key("fields").begin_object();
  for (auto field = fields.begin(); field != fields.end(); ++field) {
    const auto is_same = [&](const FieldRecord& other) { return other.key == field->key; };
    if (std::any_of(fields.begin(), field, is_same)) continue;
    json.key(field->key);
    if (std::count_if(field, fields.end(), is_same) == 1) {
      json.string(field->text);
      continue;
    }
    json.begin_array();
    for (auto same = field; same != fields.end(); ++same)
      if (is_same(*same)) json.string(same->text);
    json.end_array();
  }
  json.end_object();
}

}  // namespace

void write_fits(JsonWriter& json, const std::vector<FitRecord>& fits) {
  json.key("machines").begin_array();
  for (const auto& fit : fits) {
    json.begin_object();
    json.member("make", fit.make);
    json.member("model", fit.model);
    write_year_if(json, "year-from", fit.year_from);
    write_year_if(json, "year-to", fit.year_to);
    json.member_if("market", fit.market);
    json.member_if("frame-from", fit.frame_from);
    json.member_if("frame-to", fit.frame_to);
    json.member_if("note", fit.note);
    json.end_object();
  }
  json.end_array();
}

void write_json(JsonWriter& json, const Figure& figure) {
  write_number_if(json, "value", figure.nominal);
  write_number_if(json, "least", figure.least);
  write_number_if(json, "most", figure.most);
  if (figure.form == Form::about) json.key("about").boolean(true);
  json.member("unit", figure.unit->symbol);
  json.member("dimension", name_of(figure.unit->dimension));
}

void write_json(JsonWriter& json, const Statement& statement) {
  const bool is_single = statement.stages.size() == 1 && !statement.stages.front().hand_tight;
  if (is_single) {
    write_json(json, statement.figure());
  } else {
    json.key("stages").begin_array();
    for (const auto& stage : statement.stages) write_stage(json, stage);
    json.end_array();
  }
  json.member_if("per", statement.per);
  if (statement.at) json.member("at", shown(*statement.at));
  if (!statement.conditions.empty()) write_strings(json, "conditions", statement.conditions);
}

// A withdrawn figure is not among the figures: whoever reads only those must not take it.
void write_json(JsonWriter& json, const Answer& answer) {
  const bool withdrawn = !answer.entry.withdrawn.empty();
  json.begin_object();
  json.member("address", answer.address);
  json.member_if("variant", answer.variant);
  json.member("kind", answer.kind);
  json.member("name", answer.name);
  json.member_if("assembly", answer.assembly);
  json.member_if("sheet-title", answer.sheet_title);
  json.member_if("library", answer.library);
  write_withdrawal(json, answer.entry);
  write_values(json, "figures", withdrawn ? std::vector<Value>() : answer.figures);
  write_strings(json, "missing", answer.missing);
  write_strings(json, "acts", answer.acts);
  if (!answer.set.empty()) write_strings(json, "set", answer.set);
  write_strings(json, "identified-by", answer.marks);
  write_fits(json, answer.entry.fits);
  write_cautions(json, answer.entry.cautions);
  write_fields(json, withdrawn ? std::vector<FieldRecord>() : answer.entry.fields);
  write_strings(json, "disputed-by", answer.disputes);
  write_source(json, answer.entry.source);
  write_checked(json, answer.entry.checked);
  json.member_if("status", answer.entry.status);
  write_strings(json, "formerly", answer.entry.formerly);
  json.key("critical").boolean(answer.entry.critical);
  json.key("invented").boolean(answer.invented);
  json.member("notice", answer.invented ? std::string(invented_notice) + " " + std::string(authority_notice)
                                        : std::string(authority_notice));
  write_place(json, answer.entry.place);
  json.end_object();
}

}  // namespace sheaf
