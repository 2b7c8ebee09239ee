// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/answer_json.h"
#include "query/answer/card_document.h"
#include "query/answer/kit_document.h"
#include "query/answer/record_check.h"
#include "query/answer/wrench_text.h"

namespace sheaf {
namespace {

bool is_ticked(const CardRecord* record, const CardItem& item) {
  return record && record->ticked.contains(item.id);
}

const std::string* written_in(const CardRecord* record, const CardItem& item) {
  if (!record) return nullptr;
  const auto written = record->written.find(item.id);
  return written == record->written.end() ? nullptr : &written->second;
}

void write_item(JsonWriter& json, const CardItem& item, const CardRecord* record) {
  json.begin_object();
  json.member("id", item.id);
  json.member("deed", in_words(item.deed));
  json.member_if("place", item.place);
  if (item.stage > 0) json.key("stage").number(item.stage);
  if (item.number > 0) json.key("number").number(item.number);
  json.member_if("unit", item.unit);
  if (is_ticked(record, item)) json.key("ticked").boolean(true);
  if (const auto* text = written_in(record, item)) json.member("written", *text);
  json.end_object();
}

void write_items(JsonWriter& json, const std::vector<CardItem>& items, const CardRecord* record) {
  json.key("items").begin_array();
  for (const auto& item : items) write_item(json, item, record);
  json.end_array();
}

void write_entry(JsonWriter& json, const CardEntry& entry, const CardRecord* record) {
  json.begin_object();
  json.member("name", entry.name);
  json.key("entry");
  write_json(json, entry.answer);
  if (entry.wrench) {
    json.key("set").begin_array();
    for (const auto& line : set_lines(*entry.wrench)) json.string(line);
    json.end_array();
  }
  if (!entry.uses.empty()) {
    json.key("uses").begin_array();
    for (const auto& used : entry.uses) write_json(json, used);
    json.end_array();
  }
  write_items(json, entry.items, record);
  json.end_object();
}

void write_entries(JsonWriter& json, std::string_view name, const std::vector<CardEntry>& entries,
                   const CardRecord* record) {
  json.key(name).begin_array();
  for (const auto& entry : entries) write_entry(json, entry, record);
  json.end_array();
}

void write_head(JsonWriter& json, const Card& card) {
  json.member("sheet", card.sheet.name);
  json.member("title", card.sheet.title);
  json.member("assembly", card.sheet.assembly);
  json.member_if("maker", card.sheet.maker);
  json.key("invented").boolean(card.sheet.invented);
  json.key("machine").begin_object();
  json.member_if("make", card.machine.make);
  json.member_if("model", card.machine.model);
  if (card.machine.year != 0) json.key("year").number(card.machine.year);
  json.member_if("frame", card.machine.frame);
  json.member_if("market", card.machine.market);
  json.end_object();
  json.key("library").begin_object();
  json.member("name", card.library.name);
  json.member("digest", card.library.digest);
  json.member("data-date", card.library.data_date);
  json.end_object();
  json.member_if("shop", card.shop);
  json.key("open").begin_array();
  for (const auto& name : card.open) json.string(name);
  json.end_array();
}

void write_findings(JsonWriter& json, const Card& card, const CardRecord& record) {
  constexpr std::string_view weights[] = {"wrong", "open", "note"};
  json.key("findings").begin_array();
  for (const auto& finding : check_record(record, card)) {
    json.begin_object();
    json.member("weight", weights[static_cast<std::size_t>(finding.weight)]);
    json.member_if("item", finding.id);
    json.member("text", finding.text);
    json.end_object();
  }
  json.end_array();
}

}  // namespace

void write_json(JsonWriter& json, const Card& card, const CardRecord* record) {
  json.begin_object();
  write_head(json, card);
  json.key("identify").begin_array();
  for (std::size_t i = 0; i < card.identify.size(); ++i) {
    json.begin_object();
    json.member("text", card.identify_texts[i]);
    write_items(json, {card.identify[i]}, record);
    json.end_object();
  }
  json.end_array();
  write_entries(json, "settings", card.settings, record);
  write_entries(json, "steps", card.steps, record);
  write_entries(json, "fasteners", card.fasteners, record);
  write_entries(json, "fluids", card.fluids, record);
  write_entries(json, "measures", card.measures, record);
  json.key("kit");
  write_json(json, card.kit);
  if (record) {
    json.key("job").begin_object();
    for (const auto& [key, text] : record->job) json.member(key, text);
    json.end_object();
    write_findings(json, card, *record);
  }
  json.member("notice", std::string(card.sheet.invented ? "Invented demonstration figures. " : "") +
                            std::string(authority_notice));
  json.end_object();
}

}  // namespace sheaf
