// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/reckon_text.h"

#include "query/answer/answer_json.h"

namespace sheaf {
namespace {

std::string lead_of(const ReckonedLine& line) { return line.figure ? shown(*line.figure) : line.words; }

Line rest_of(const ReckonedLine& line) {
  Line rest(line.label);
  if (!line.note.empty()) rest.add((line.label.empty() ? "" : ", ") + line.note, Tone::quiet);
  return rest;
}

void write_results(Page& page, const Reckoning& reckoning) {
  std::vector<std::vector<Line>> rows;
  for (const auto& result : reckoning.results) {
    rows.push_back({Line(lead_of(result), Tone::figure), rest_of(result)});
    for (const auto& other : result.derived) rows.push_back({Line(shown(other), Tone::derived), Line()});
  }
  page.rows(rows, 2);
}

// The label stands before the first of them.
void write_all(Page& page, std::string_view label, const std::vector<std::string>& texts,
               Tone tone = Tone::plain) {
  for (std::size_t i = 0; i < texts.size(); ++i) page.labelled(i == 0 ? label : "", Line(texts[i], tone));
}

std::string given_words(const Reckoning& reckoning) {
  std::string words;
  for (const auto& each : reckoning.given)
    words += (words.empty() ? "" : " · ") + each.label + " " + each.text;
  return words;
}

void write_texts(JsonWriter& json, std::string_view key, const std::vector<std::string>& texts) {
  json.key(key).begin_array();
  for (const auto& text : texts) json.string(text);
  json.end_array();
}

void write_figure(JsonWriter& json, const Figure& figure) {
  json.member("text", shown(figure));
  write_json(json, figure);
}

void write_line(JsonWriter& json, const ReckonedLine& line) {
  json.begin_object();
  json.member_if("label", line.label);
  if (line.figure)
    write_figure(json, *line.figure);
  else
    json.member("text", line.words);
  json.member_if("note", line.note);
  if (!line.derived.empty()) {
    json.key("derived").begin_array();
    for (const auto& other : line.derived) {
      json.begin_object();
      write_figure(json, other);
      json.end_object();
    }
    json.end_array();
  }
  json.end_object();
}

}  // namespace

void write_text(Page& page, const Reckoning& reckoning) {
  write_results(page, reckoning);
  page.labelled("given", Line(given_words(reckoning)));
  write_all(page, "taken", reckoning.taken);
  for (const auto& caution : reckoning.cautions) page.labelled("caution", Line(caution, Tone::caution));
  for (const auto& formula : reckoning.formulae)
    page.labelled("formula", Line(formula.text).add(" (" + formula.source + ")", Tone::quiet));
  write_all(page, "table", reckoning.tables, Tone::quiet);
}

void write_json(JsonWriter& json, const Reckoning& reckoning) {
  json.begin_object();
  json.member("topic", reckoning.topic);
  json.key("results").begin_array();
  for (const auto& line : reckoning.results) write_line(json, line);
  json.end_array();
  json.key("given").begin_object();
  for (const auto& each : reckoning.given) json.member(each.label, each.text);
  json.end_object();
  write_texts(json, "taken", reckoning.taken);
  json.key("formulae").begin_array();
  for (const auto& formula : reckoning.formulae) {
    json.begin_object();
    json.member("formula", formula.text);
    json.member("source", formula.source);
    json.end_object();
  }
  json.end_array();
  write_texts(json, "tables", reckoning.tables);
  write_texts(json, "cautions", reckoning.cautions);
  json.end_object();
}

void write_text(Page& page, const Topic& topic) {
  page.line(Line(topic.purpose), 2);
  std::vector<std::vector<Line>> rows;
  for (const auto& name : topic.names)
    rows.push_back(
        {Line(name.name, Tone::figure), Line(name.help).add(name.required ? "; needed" : "", Tone::act)});
  page.rows(rows, 4);
  page.labelled("as in", Line("sheaf reckon " + std::string(topic.example)));
}

void write_topics(Page& page) {
  std::vector<std::vector<Line>> rows;
  for (const auto& topic : all_topics())
    rows.push_back({Line(topic.name, Tone::figure), Line(topic.purpose)});
  page.rows(rows, 2);
  page.labelled("more", Line("sheaf reckon TOPIC alone says what it is given"));
}

}  // namespace sheaf
