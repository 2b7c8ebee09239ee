// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/card_record.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <span>

#include "query/answer/json.h"

namespace sheaf {
namespace {

using Json = nlohmann::json;
using Fault = std::optional<Failure>;

constexpr std::string_view kind_of_file = "card-record";
constexpr std::size_t longest_text = 2000;  // of one value; a note is no essay
constexpr std::size_t most_items = 5000;

constexpr std::array<JobField, 7> fields = {{{"number", "job"},
                                             {"frame", "frame number"},
                                             {"distance", "distance or hours"},
                                             {"on", "date"},
                                             {"by", "done by"},
                                             {"second", "read again by"},
                                             {"note", "note"}}};

Failure no_record(const std::string& why) { return Failure{"it is no record of a card: " + why}; }

Fault read_text(const Json& value, const std::string& name, std::string& text) {
  if (!value.is_string()) return no_record(name + " is no text");
  text = value.get<std::string>();
  if (text.size() > longest_text) return no_record(name + " is too long");
  return std::nullopt;
}

Fault read_texts(const Json& value, const std::string& name, std::map<std::string, std::string>& texts) {
  if (!value.is_object() || value.size() > most_items) return no_record(name + " is no object of texts");
  for (const auto& [key, text] : value.items())
    if (auto fault = read_text(text, name + "." + key, texts[key])) return fault;
  return std::nullopt;
}

Fault read_items(const Json& value, CardRecord& record) {
  if (!value.is_object() || value.size() > most_items) return no_record("items is no object");
  for (const auto& [id, item] : value.items()) {
    if (item.is_boolean()) {
      if (item.get<bool>()) record.ticked.insert(id);
    } else if (auto fault = read_text(item, "items." + id, record.written[id])) {
      return fault;
    }
  }
  return std::nullopt;
}

Fault read_machine(const Json& value, CardMachine& machine) {
  if (!value.is_object()) return no_record("machine is no object");
  for (const auto& [key, member] : value.items()) {
    if (key == "year") {
      if (!member.is_number_integer() || member < 0 || member > 9999)
        return no_record("machine.year is no year");
      machine.year = member.get<int>();
      continue;
    }
    std::string* text = key == "make"     ? &machine.make
                        : key == "model"  ? &machine.model
                        : key == "frame"  ? &machine.frame
                        : key == "market" ? &machine.market
                                          : nullptr;
    if (!text) return no_record("machine." + key + " is unknown here");
    if (auto fault = read_text(member, "machine." + key, *text)) return fault;
  }
  return std::nullopt;
}

Fault read_library(const Json& value, CardRecord& record) {
  std::map<std::string, std::string> texts;
  if (auto fault = read_texts(value, "library", texts)) return fault;
  record.library = texts["name"];
  record.digest = texts["digest"];
  return std::nullopt;
}

Fault read_job(const Json& value, CardRecord& record) {
  if (auto fault = read_texts(value, "job", record.job)) return fault;
  for (const auto& [key, text] : record.job)
    if (std::ranges::find(fields, key, &JobField::key) == fields.end())
      return no_record("job." + key + " is unknown here");
  return std::nullopt;
}

Fault read_member(const std::string& key, const Json& value, CardRecord& record) {
  if (key == "sheet") return read_text(value, key, record.sheet);
  if (key == "library") return read_library(value, record);
  if (key == "machine") return read_machine(value, record.machine);
  if (key == "job") return read_job(value, record);
  if (key == "items") return read_items(value, record);
  if (key == "figures") return read_texts(value, key, record.figures);
  if (key == "schema" || key == "kind") return std::nullopt;
  return no_record("'" + key + "' is unknown here");
}

void write_texts(JsonWriter& json, std::string_view name, const std::map<std::string, std::string>& texts) {
  json.key(name).begin_object();
  for (const auto& [key, text] : texts) json.member(key, text);
  json.end_object();
}

void write_machine(JsonWriter& json, const CardMachine& machine) {
  json.key("machine").begin_object();
  json.member_if("make", machine.make);
  json.member_if("model", machine.model);
  if (machine.year != 0) json.key("year").number(machine.year);
  json.member_if("frame", machine.frame);
  json.member_if("market", machine.market);
  json.end_object();
}

// Ticks and texts together, in the order of their names.
void write_items(JsonWriter& json, const CardRecord& record) {
  json.key("items").begin_object();
  std::map<std::string, const std::string*> all;
  for (const auto& id : record.ticked) all[id] = nullptr;
  for (const auto& [id, text] : record.written) all[id] = &text;
  for (const auto& [id, text] : all) {
    json.key(id);
    text ? json.string(*text) : json.boolean(true);
  }
  json.end_object();
}

}  // namespace

std::span<const JobField> job_fields() { return fields; }

CardRecord new_record(const Card& card) {
  CardRecord record;
  record.sheet = card.sheet.name;
  record.library = card.library.name;
  record.digest = card.library.digest;
  record.machine = card.machine;
  return record;
}

Result<CardRecord> parse_record(std::string_view text) {
  if (text.size() > longest_record) return no_record("it is too long");
  const Json json = Json::parse(text, nullptr, false);
  if (json.is_discarded()) return no_record("it is no JSON");
  if (!json.is_object()) return no_record("it is no JSON object");
  if (json.value("kind", Json()) != kind_of_file)
    return no_record("its kind is not " + std::string(kind_of_file));
  if (json.value("schema", Json()) != record_schema)
    return Failure{"it was written by another version: its schema is not " + std::to_string(record_schema)};
  CardRecord record;
  for (const auto& [key, value] : json.items())
    if (auto fault = read_member(key, value, record)) return *fault;
  if (record.sheet.empty()) return no_record("it names no sheet");
  return record;
}

std::string to_json(const CardRecord& record) {
  JsonWriter json;
  json.begin_object();
  json.key("schema").number(record_schema);
  json.member("kind", kind_of_file);
  json.member("sheet", record.sheet);
  json.key("library").begin_object();
  json.member("name", record.library);
  json.member("digest", record.digest);
  json.end_object();
  write_machine(json, record.machine);
  write_texts(json, "job", record.job);
  write_items(json, record);
  write_texts(json, "figures", record.figures);
  json.end_object();
  return json.text() + "\n";
}

std::string figure_text(const CardEntry& entry) {
  const auto& figures = entry.answer.figures;
  return figures.empty() || !entry.answer.entry.withdrawn.empty() ? std::string() : figures.front().text;
}

}  // namespace sheaf
