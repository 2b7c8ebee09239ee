// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/findings_json.h"

#include "query/answer/answer_json.h"

namespace sheaf {
namespace {

template <typename List, typename Write>
void write_list(JsonWriter& json, std::string_view name, const List& list, Write write) {
  json.key(name).begin_array();
  for (const auto& each : list) write(each);
  json.end_array();
}

std::string_view name_of(Near why) {
  switch (why) {
    case Near::none:
      return "none";
    case Near::other_years:
      return "other-years";
    case Near::other_machines:
      return "other-machines";
    case Near::other_sides:
      return "other-sides";
    case Near::figure_not_stated:
      return "figure-not-stated";
    case Near::other_sizes:
      return "other-sizes";
    case Near::fewer_words:
      return "fewer-words";
    case Near::unknown_words:
      return "unknown-words";
  }
  return "";
}

// What is near is named, not stated: a program must not take its figure for the answer.
void write_near(JsonWriter& json, const FoundAnswer& near) {
  json.begin_object();
  json.member("address", near.answer.address);
  json.member("kind", near.answer.kind);
  json.member("name", near.answer.name);
  json.member("differs", near.differs);
  json.end_object();
}

void write_machine(JsonWriter& json, const Machine& machine) {
  json.begin_object();
  json.member("make", machine.make);
  json.member("model", machine.model);
  json.end_object();
}

}  // namespace

void write_json(JsonWriter& json, const QuestionReading& reading) {
  const auto strings = [&](std::string_view name, const std::vector<std::string>& list) {
    if (!list.empty()) write_list(json, name, list, [&](const std::string& text) { json.string(text); });
  };
  json.begin_object();
  json.member("in-words", in_words(reading));
  if (!reading.machines.empty())
    write_list(json, "machines", reading.machines,
               [&](const Machine& machine) { write_machine(json, machine); });
  if (reading.year != 0) json.key("year").number(reading.year);
  if (reading.year_to > reading.year) json.key("year-to").number(reading.year_to);
  json.member_if("frame", reading.frame);
  json.member_if("market", reading.market);
  if (!reading.parts.empty())
    write_list(json, "parts", reading.parts, [&](const PartAsked& part) { json.string(part.typed); });
  strings("figures", reading.figures);
  strings("sides", reading.sides);
  strings("kinds", reading.kinds);
  strings("unread", reading.unread);
  strings("left-aside", reading.left_aside);
  strings("left-out", reading.left_out);
  write_list(json, "corrections", reading.corrections, [&](const Correction& correction) {
    json.begin_object();
    json.member("typed", correction.typed);
    json.member("read", correction.read);
    json.end_object();
  });
  json.end_object();
}

void write_json(JsonWriter& json, const FoundAnswers& found) {
  json.begin_object();
  json.key("schema").number(json_schema);
  json.member("question", found.question);
  json.key("reading");
  write_json(json, found.reading);
  if (!found.shelf.empty()) {
    write_list(json, "sheets", found.shelf, [&](const ShelfSheet& on_shelf) {
      json.begin_object();
      json.member("sheet", on_shelf.sheet.name);
      json.member("title", on_shelf.sheet.title);
      json.member_if("assembly", on_shelf.sheet.assembly);
      write_fits(json, on_shelf.sheet.fits);
      json.end_object();
    });
  }
  if (found.conversion) {
    json.key("conversion");
    write_json(json, *found.conversion);
  }
  write_list(json, "results", found.answers, [&](const Answer& answer) { write_json(json, answer); });
  write_list(json, "also", found.also, [&](const Answer& answer) { write_json(json, answer); });
  write_list(json, "near", found.near, [&](const FoundAnswer& near) { write_near(json, near); });
  if (!found.near.empty()) json.member("near-because", name_of(found.why_near));
  if (!found.counted_by.empty()) {
    json.member("counted-by", found.counted_by);
    write_list(json, "counts", found.counts, [&](const FacetCount& count) {
      json.begin_object();
      json.member("value", count.value);
      json.key("entries").number(static_cast<long long>(count.entries));
      json.end_object();
    });
  }
  json.key("total").number(static_cast<long long>(found.total));
  json.key("total-is-exact").boolean(found.total_is_exact);
  write_list(json, "notices", found.notices, [&](const std::string& text) { json.string(text); });
  json.end_object();
}

}  // namespace sheaf
