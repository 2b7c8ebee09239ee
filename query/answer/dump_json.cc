// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/dump.h"
#include "query/answer/json.h"

namespace sheaf {
namespace {

void member_if(JsonWriter& json, std::string_view name, std::int64_t number) {
  if (number != 0) json.key(name).number(number);
}

void write(JsonWriter& json, const Place& place) {
  json.member("file", place.file);
  json.key("line").number(place.line);
}

void write(JsonWriter& json, const FieldRecord& field) {
  json.member("field", field.key);
  json.member("text", field.text);
  write(json, field.place);
}

void write(JsonWriter& json, const FitRecord& fit) {
  json.member("make", fit.make);
  json.member("model", fit.model);
  member_if(json, "year-from", fit.year_from);
  member_if(json, "year-to", fit.year_to);
  json.member_if("market", fit.market);
  json.member_if("frame-from", fit.frame_from);
  json.member_if("frame-to", fit.frame_to);
  json.member_if("note", fit.note);
}

void write(JsonWriter& json, const CautionRecord& caution) {
  json.member("name", caution.name);
  json.member("text", caution.text);
}

void write(JsonWriter& json, const SourceRecord& source) {
  json.member_if("title", source.title);
  json.member_if("publisher", source.publisher);
  json.member_if("edition", source.edition);
  member_if(json, "year", source.year);
  json.member_if("page", source.page);
  json.member_if("note", source.note);
}

void write(JsonWriter& json, const CheckRecord& checked) {
  json.member_if("on", checked.on);
  json.member_if("by", checked.by);
  json.member_if("against", checked.against);
  json.member_if("second", checked.second);
}

void write(JsonWriter& json, const WithdrawalRecord& withdrawn) {
  json.member("on", withdrawn.on);
  json.member("reason", withdrawn.reason);
  json.member_if("instead", withdrawn.instead);
}

template <typename Record>
void object_if(JsonWriter& json, std::string_view name, const Record& record) {
  if (record == Record{}) return;
  json.key(name).begin_object();
  write(json, record);
  json.end_object();
}

template <typename Record>
void list(JsonWriter& json, std::string_view name, const std::vector<Record>& records) {
  json.key(name).begin_array();
  for (const Record& record : records) {
    json.begin_object();
    write(json, record);
    json.end_object();
  }
  json.end_array();
}

// What sheets and entries have alike.
template <typename Record>
void write_common(JsonWriter& json, const Record& record) {
  list(json, "fields", record.fields);
  list(json, "machines", record.fits);
  list(json, "cautions", record.cautions);
  object_if(json, "source", record.source);
  object_if(json, "checked", record.checked);
}

JsonWriter begun(std::string_view record) {
  JsonWriter json;
  json.begin_object();
  json.member("record", record);
  return json;
}

std::string ended(JsonWriter& json) {
  json.end_object();
  return json.text();
}

}  // namespace

std::string dump_line(const LibraryFacts& facts) {
  JsonWriter json = begun("library");
  json.member("name", facts.name);
  json.member("digest", facts.digest);
  json.member("data-date", facts.data_date);
  json.key("format").number(facts.format);
  json.key("sheets").number(facts.sheets);
  json.key("entries").number(facts.entries);
  json.key("words").number(facts.words);
  return ended(json);
}

std::string dump_line(const SheetRecord& sheet) {
  JsonWriter json = begun("sheet");
  json.member("sheet", sheet.name);
  json.member("form", sheet.form);
  json.member("title", sheet.title);
  json.member_if("assembly", sheet.assembly);
  json.member_if("maker", sheet.maker);
  json.member_if("row-kind", sheet.row_kind);
  json.key("invented").boolean(sheet.invented);
  write_common(json, sheet);
  write(json, sheet.place);
  return ended(json);
}

std::string dump_line(EntryId id, const EntryRecord& entry) {
  JsonWriter json = begun("entry");
  json.key("id").number(id);
  json.member("address", entry.address);
  json.member_if("variant", entry.variant);
  json.member("kind", entry.kind);
  json.member("name", entry.name);
  json.member_if("status", entry.status);
  json.key("critical").boolean(entry.critical);
  if (!entry.withdrawn.empty()) object_if(json, "withdrawn", entry.withdrawn.front());
  json.key("formerly").begin_array();
  for (const std::string& address : entry.formerly) json.string(address);
  json.end_array();
  write_common(json, entry);
  write(json, entry.place);
  return ended(json);
}

std::string dump_line(const Machine& machine) {
  JsonWriter json = begun("machine");
  json.member("make", machine.make);
  json.member("model", machine.model);
  member_if(json, "year-from", machine.year_from);
  member_if(json, "year-to", machine.year_to);
  return ended(json);
}

std::string dump_line(const WordRecord& word) {
  JsonWriter json = begun("word");
  json.member("group", word.group);
  json.member("word", word.word);
  json.member("language", word.language);
  json.key("main").boolean(word.main);
  json.key("never").boolean(word.never);
  return ended(json);
}

}  // namespace sheaf
