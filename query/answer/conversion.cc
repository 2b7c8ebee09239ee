// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/conversion.h"

#include "query/answer/answer_json.h"
#include "query/answer/csv.h"
#include "query/answer/text.h"
#include "query/answer/value.h"

namespace sheaf {
namespace {

std::string_view relation(const DerivedFigure& derived) { return derived.exact ? "=" : "≈"; }

std::string setting_words(const DerivedFigure& derived, const Number& step) {
  const Setting& setting = *derived.setting;
  const Unit& unit = *derived.statement.figure().unit;
  std::string words =
      "set " + shown(Quantity{setting.value, &unit}) + " on a scale of " + shown(Quantity{step, &unit});
  if (setting.inside)
    return words + (setting.stated ? "; inside the band" : "; within the last digit, no band is stated");
  return "no mark of a scale of " + shown(Quantity{step, &unit}) + " is inside; the nearest is " +
         shown(Quantity{setting.value, &unit});
}

// What was typed, then what follows from it, marked.
void write_reading(Page& page, const Reading& reading, const std::optional<Number>& step) {
  std::vector<std::vector<Line>> rows;
  for (const auto& derived : reading.derived) {
    const Figure& figure = derived.statement.figure();
    const bool staged = derived.statement.stages.size() > 1;
    Line lead(std::string(relation(derived)) + " " + (staged ? shown(derived.statement) : lead_of(figure)),
              Tone::figure);
    Line rest;
    if (derived.setting && step)
      rest.add(setting_words(derived, *step));
    else if (!derived.basis.empty())
      rest.add(derived.basis, Tone::quiet);
    else
      rest.add(spelled_out(*figure.unit), Tone::quiet);
    rows.push_back({lead, Line(staged ? std::string() : band_of(figure), Tone::figure), rest});
  }
  rows.insert(rows.begin() + (rows.empty() ? 0 : 1),
              {Line("  " + shown(reading.source)), Line(), Line("as typed", Tone::quiet)});
  page.rows(rows, 2);
}

void write_statement(JsonWriter& json, const Statement& statement) {
  json.begin_object();
  json.member("text", shown(statement));
  write_json(json, statement);
  json.end_object();
}

void write_derived(JsonWriter& json, const DerivedFigure& derived) {
  json.begin_object();
  json.member("text", shown(derived.statement));
  write_json(json, derived.statement);
  json.key("derived").boolean(true);
  json.key("exact").boolean(derived.exact);
  json.member_if("basis", derived.basis);
  if (derived.setting) {
    json.key("setting").begin_object();
    json.key("value").number(derived.setting->value);
    json.key("inside").boolean(derived.setting->inside);
    json.key("band-stated").boolean(derived.setting->stated);
    json.end_object();
  }
  json.end_object();
}

std::string number_cell(const std::optional<Number>& number) {
  return number ? to_text(*number) : std::string();
}

void add_figure(std::vector<std::string>& cells, const Figure& figure) {
  cells.push_back(number_cell(figure.nominal));
  cells.push_back(number_cell(figure.least));
  cells.push_back(number_cell(figure.most));
  cells.emplace_back(figure.unit ? figure.unit->symbol : std::string_view());
}

}  // namespace

Conversion convert_line(const std::string& typed, const std::optional<Number>& step) {
  Conversion conversion;
  conversion.typed = typed;
  conversion.step = step;
  auto readings = answer_request(ConversionRequest{.text = typed, .step = step});
  if (readings)
    conversion.readings = std::move(readings).value();
  else
    conversion.failure = readings.failure();
  return conversion;
}

void write_text(Page& page, const Conversion& conversion) {
  const bool ambiguous = conversion.readings.size() > 1;
  if (ambiguous)
    page.line(Line("This can be read in " + std::to_string(conversion.readings.size()) + " ways:"), 2);
  for (const auto& reading : conversion.readings) {
    write_reading(page, reading, conversion.step);
    if (ambiguous) page.blank();
  }
}

void write_json(JsonWriter& json, const Conversion& conversion) {
  json.begin_object();
  json.member("typed", conversion.typed);
  if (conversion.failure) json.member("error", conversion.failure->message);
  json.key("readings").begin_array();
  for (const auto& reading : conversion.readings) {
    json.begin_object();
    json.key("source");
    write_statement(json, reading.source);
    json.key("converted").begin_array();
    for (const auto& derived : reading.derived) write_derived(json, derived);
    json.end_array();
    json.end_object();
  }
  json.end_array();
  json.end_object();
}

std::string one_line(const Conversion& conversion) {
  if (conversion.failure) return "? " + conversion.typed + ": " + conversion.failure->message;
  std::string line;
  for (const auto& reading : conversion.readings) {
    if (!line.empty()) line += " or ";
    line += shown(reading.source);
    for (const auto& derived : reading.derived) {
      line += " " + std::string(relation(derived)) + " " + shown(derived.statement);
      if (derived.setting && conversion.step) line += ", " + setting_words(derived, *conversion.step);
    }
  }
  return line;
}

std::string csv_heading() {
  return csv_row({"typed", "value", "least", "most", "unit", "derived-value", "derived-least", "derived-most",
                  "derived-unit", "exact", "set", "inside", "error"});
}

std::string csv_rows(const Conversion& conversion) {
  if (conversion.failure) {
    std::vector<std::string> cells(13);
    cells.front() = conversion.typed;
    cells.back() = conversion.failure->message;
    return csv_row(cells);
  }
  std::string rows;
  for (const auto& reading : conversion.readings) {
    for (const auto& derived : reading.derived) {
      std::vector<std::string> cells = {conversion.typed};
      add_figure(cells, reading.source.figure());
      add_figure(cells, derived.statement.figure());
      cells.emplace_back(derived.exact ? "yes" : "no");
      cells.push_back(derived.setting ? to_text(derived.setting->value) : std::string());
      cells.emplace_back(derived.setting ? derived.setting->inside ? "yes" : "no" : "");
      cells.emplace_back();
      rows += csv_row(cells);
    }
  }
  return rows;
}

void write_text(Page& page, const ConversionTable& table) {
  std::vector<std::vector<Line>> rows = {
      {Line(table.from->symbol, Tone::quiet), Line(table.to->symbol, Tone::quiet)}};
  int left = display_width(table.from->symbol), right = display_width(table.to->symbol);
  for (const auto& row : table.rows) {
    left = std::max(left, display_width(shown(row.source.value)));
    right = std::max(right, display_width(shown(row.derived.value)));
  }
  const auto at_right = [](const std::string& text, int width) {
    return std::string(static_cast<std::size_t>(std::max(width - display_width(text), 0)), ' ') + text;
  };
  for (const auto& row : table.rows)
    rows.push_back({Line(at_right(shown(row.source.value), left)),
                    Line(at_right(shown(row.derived.value), right), Tone::figure)});
  rows.front() = {Line(at_right(std::string(table.from->symbol), left)),
                  Line(at_right(std::string(table.to->symbol), right))};
  page.rows(rows, 2);
}

void write_json(JsonWriter& json, const ConversionTable& table) {
  json.begin_object();
  json.member("unit", table.from->symbol);
  json.member("derived-unit", table.to->symbol);
  json.key("rows").begin_array();
  for (const auto& row : table.rows) {
    json.begin_object();
    json.key("value").number(row.source.value);
    json.key("derived").number(row.derived.value);
    json.end_object();
  }
  json.end_array();
  json.end_object();
}

std::string csv_rows(const ConversionTable& table) {
  std::string rows = csv_row({std::string(table.from->symbol), std::string(table.to->symbol)});
  for (const auto& row : table.rows) rows += csv_row({to_text(row.source.value), to_text(row.derived.value)});
  return rows;
}

}  // namespace sheaf
